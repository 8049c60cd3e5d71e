-- Slabs and their diaries.
--
-- A migration is never changed once a release has carried it: add the next number instead.

CREATE TABLE slab (
    id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    -- The name in lower case: SQLite folds only A-Z, names may hold any letter.
    name_key TEXT NOT NULL UNIQUE
) STRICT;

CREATE TABLE entry (
    -- The order in which this store took the entries in. Another store may have another order.
    arrival INTEGER NOT NULL PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    slab TEXT NOT NULL REFERENCES slab (id),
    -- Microseconds since 1970-01-01T00:00:00Z. The text keeps the moment as it was lived.
    happened_us INTEGER NOT NULL,
    noted_us INTEGER NOT NULL,
    kind TEXT NOT NULL,
    replaces TEXT,
    -- The whole entry as JSON. Everything above is taken from it and can be checked against it.
    text TEXT NOT NULL,
    -- BLAKE3 of the text, so that a letter that rots on the disk is noticed.
    digest BLOB NOT NULL CHECK (length(digest) = 32)
) STRICT;

CREATE INDEX entry_happened ON entry (slab, happened_us);
CREATE INDEX entry_noted ON entry (slab, noted_us);
CREATE INDEX entry_kind ON entry (slab, kind);
CREATE INDEX entry_replaces ON entry (replaces) WHERE replaces IS NOT NULL;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN
    SELECT RAISE(ABORT, 'an entry is never changed; add one that replaces it');
END;

CREATE TRIGGER entry_is_never_dropped BEFORE DELETE ON entry
BEGIN
    SELECT RAISE(ABORT, 'an entry is never dropped; add one that replaces it');
END;

-- INSERT OR REPLACE deletes the old row without calling the trigger above.
CREATE TRIGGER entry_is_never_overwritten BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.id OR arrival = NEW.arrival)
BEGIN
    SELECT RAISE(ABORT, 'an entry is never overwritten; add one that replaces it');
END;
