-- People, their sessions, share links, slabs put away, and what makes long lists quick.
--
-- Secrets (session tokens, link tokens, the set-up code) are here only as their BLAKE3 hashes, and
-- passwords only as PHC strings. All moments are microseconds since 1970-01-01T00:00:00Z.

CREATE TABLE person (
    id TEXT NOT NULL PRIMARY KEY,
    name TEXT NOT NULL,
    -- The name in lower case, as for slabs.
    name_key TEXT NOT NULL UNIQUE,
    role TEXT NOT NULL CHECK (role IN ('owner', 'crew', 'guest')),
    password_phc TEXT NOT NULL CHECK (password_phc GLOB '$*'),
    lang TEXT NOT NULL,
    unit_system TEXT NOT NULL,
    made_us INTEGER NOT NULL,
    closed_us INTEGER
) STRICT;

CREATE TABLE session (
    token_hash BLOB NOT NULL PRIMARY KEY CHECK (length(token_hash) = 32),
    person TEXT NOT NULL REFERENCES person (id),
    made_us INTEGER NOT NULL,
    last_seen_us INTEGER NOT NULL,
    expires_us INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX session_person ON session (person);
CREATE INDEX session_expires ON session (expires_us);

-- At most one row: the code that lets the first owner in.
CREATE TABLE owner_code (
    only INTEGER NOT NULL PRIMARY KEY CHECK (only = 1),
    hash BLOB NOT NULL CHECK (length(hash) = 32),
    made_us INTEGER NOT NULL
) STRICT;

CREATE TABLE link (
    id TEXT NOT NULL PRIMARY KEY,
    token_hash BLOB NOT NULL UNIQUE CHECK (length(token_hash) = 32),
    slab TEXT NOT NULL REFERENCES slab (id),
    -- The pages it shows: a JSON list of their codes.
    pages TEXT NOT NULL CHECK (json_type(pages) = 'array'),
    note TEXT NOT NULL,
    -- NULL: made on the machine itself, without sign-in.
    made_by TEXT REFERENCES person (id),
    made_us INTEGER NOT NULL,
    expires_us INTEGER NOT NULL,
    withdrawn_us INTEGER
) STRICT;

CREATE INDEX link_slab ON link (slab);

-- Slabs that the list hides until they are brought back.
CREATE TABLE put_away (
    slab TEXT NOT NULL PRIMARY KEY REFERENCES slab (id),
    at_us INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- The next two tables repeat what the entries say, so that no list has to count them. They have no
-- key to the slab: the entries have it. The store's check compares them with the entries.

-- One row for each slab that has an entry. A trigger keeps it, so that a program of the older
-- version that has the store open meanwhile keeps it too.
CREATE TABLE tally (
    slab TEXT NOT NULL PRIMARY KEY,
    entries INTEGER NOT NULL,
    last_arrival INTEGER NOT NULL,
    last_noted_us INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

INSERT INTO tally (slab, entries, last_arrival, last_noted_us)
SELECT slab, count(*), max(arrival), max(noted_us) FROM entry GROUP BY slab;

CREATE TRIGGER entry_is_tallied AFTER INSERT ON entry
BEGIN
    INSERT INTO tally (slab, entries, last_arrival, last_noted_us)
    VALUES (NEW.slab, 1, NEW.arrival, NEW.noted_us)
    ON CONFLICT (slab) DO UPDATE SET
        entries = entries + 1,
        last_arrival = max(last_arrival, excluded.last_arrival),
        last_noted_us = max(last_noted_us, excluded.last_noted_us);
END;

-- Which photographs the entries of a slab name.
CREATE TABLE entry_photograph (
    slab TEXT NOT NULL,
    hash TEXT NOT NULL,
    PRIMARY KEY (slab, hash)
) STRICT, WITHOUT ROWID;

-- An entry whose text has rotted must not keep the store from opening: the check tells of it.
INSERT OR IGNORE INTO entry_photograph (slab, hash)
SELECT entry.slab, photograph.value
FROM entry,
    json_each(CASE WHEN json_valid(entry.text) THEN entry.text ELSE '{}' END, '$.photographs') AS photograph
WHERE photograph.type = 'text';

-- The order in which a diary is told. It begins with all of the index that it takes the place of.
CREATE INDEX entry_told ON entry (slab, happened_us, noted_us, id, kind);
DROP INDEX entry_happened;
