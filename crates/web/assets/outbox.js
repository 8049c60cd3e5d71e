// The outbox: entries that wait on this phone until the server has answered "written".
//
// Shared by the pages and the service worker. It has no import and no export on purpose: a page
// imports it for its effect, the worker takes it with importScripts, so that it works in browsers
// whose service workers cannot be modules. What it offers hangs on `self.underfootOutbox`.
(() => {
  "use strict";

  // A record is { id, writer, action, fields: [[name, value]], files: [{ field, name, type, blob }],
  // slab, label, made: milliseconds, state: "waiting" | "refused" | "needs-sign-in", mistakes }.
  // It belongs to its writer, the person by the id that the server gives: sent and shown only
  // while that person is signed in on this phone.
  let opened = null;

  function open() {
    opened ??= new Promise((resolve, reject) => {
      const asked = indexedDB.open("underfoot", 2);
      asked.onupgradeneeded = ({ oldVersion }) => {
        if (oldVersion < 1) {
          asked.result.createObjectStore("outbox", { keyPath: "id" });
          asked.result.createObjectStore("drafts", { keyPath: "key" });
        }
        asked.result.createObjectStore("who", { keyPath: "key" });
      };
      asked.onsuccess = () => {
        // A later version in another tab must not be held up by this one.
        asked.result.onversionchange = () => {
          asked.result.close();
          opened = null;
        };
        resolve(asked.result);
      };
      asked.onerror = () => {
        opened = null;
        reject(asked.error);
      };
    });
    return opened;
  }

  // Resolves when the transaction is complete, not when the request is: "kept" must mean on disk.
  async function act(store, mode, what) {
    const db = await open();
    return new Promise((resolve, reject) => {
      const work = db.transaction(store, mode, { durability: "strict" });
      const asked = what(work.objectStore(store));
      work.oncomplete = () => resolve(asked.result);
      work.onabort = () => reject(work.error ?? asked.error);
    });
  }

  const listeners = new Set();
  const channel = "BroadcastChannel" in self ? new BroadcastChannel("underfoot-outbox") : null;
  if (channel) channel.onmessage = ({ data }) => listeners.forEach((listener) => listener(data));

  // `how` is "sent" when the server has just taken an entry, "person" when another one is signed in
  // or nobody any more, and "changed" otherwise.
  function changed(how = "changed") {
    channel?.postMessage(how);
    listeners.forEach((listener) => listener(how));
  }

  async function put(record) {
    await act("outbox", "readwrite", (store) => store.put(record));
    changed();
  }

  async function remove(id, how) {
    await act("outbox", "readwrite", (store) => store.delete(id));
    changed(how);
  }

  const get = (id) => act("outbox", "readonly", (store) => store.get(id));

  async function all() {
    const records = await act("outbox", "readonly", (store) => store.getAll());
    return records.sort((a, b) => a.made - b.made);
  }

  // What waits of one person. Nobody's are nobody's to see.
  const of = async (writer) => (await all()).filter((record) => writer && record.writer === writer);

  // Who is signed in on this phone: { writer, leaving }. No writer yet is null, nobody any more is
  // "". `leaving` is a session that was ended here and not yet on the server.
  async function who() {
    return (await act("who", "readonly", (store) => store.get("now"))) ?? { writer: null, leaving: false };
  }

  async function setWho(writer, leaving = false) {
    await act("who", "readwrite", (store) => store.put({ key: "now", writer, leaving }));
    changed("person");
  }

  const PAGES = "pages";
  const PICTURES = "pictures";

  // First of all, and before anything is written: it also makes room.
  async function forgetPages() {
    await caches.delete(PAGES);
    await caches.delete(PICTURES);
  }

  // A page came from the server, made for this writer; for nobody when nobody is signed in there.
  async function meet(writer) {
    const now = await who();
    if (!writer) {
      if (now.leaving) await setWho("");
    } else if (!now.leaving && now.writer !== writer) {
      await forgetPages();
      await setWho(writer);
    }
  }

  // Signs out on this phone, signal or not.
  async function leave() {
    await setWho("", true);
    await forgetPages();
  }

  // Ends the session on the server. Says whether it is over.
  async function endSession() {
    try {
      const answer = await fetch("/sign-out", {
        method: "POST",
        headers: { Accept: "application/json" },
        credentials: "same-origin",
        signal: AbortSignal.timeout(8_000),
      });
      // Only our own "ok": the log-in page of a hotel network answers too.
      if ((await answer.json()).ok !== true) return false;
    } catch {
      return false;
    }
    await setWho("");
    return true;
  }

  // A weak signal on a job site: allow for about 10 kB a second before giving up on an answer.
  function patience(record) {
    const bytes = record.files.reduce((sum, file) => sum + file.blob.size, 0);
    return 30_000 + bytes / 10;
  }

  // Asked again later, although the number begins with 4: too slow, too early, too often.
  const LATER = new Set([408, 425, 429]);

  // Gives { is: "sent" | "refused" | "needs-sign-in" | "server-trouble" | "no-answer", … }.
  async function post(record) {
    const body = new FormData();
    for (const [name, value] of record.fields) body.append(name, value);
    // The server takes it only from a session of this person.
    body.set("writer", record.writer);
    for (const file of record.files) body.append(file.field, file.blob, file.name);
    let answer;
    let said = null;
    try {
      answer = await fetch(record.action, {
        method: "POST",
        body,
        headers: { Accept: "application/json" },
        credentials: "same-origin",
        signal: AbortSignal.timeout(patience(record)),
      });
      const text = await answer.text();
      if ((answer.headers.get("content-type") ?? "").includes("json")) said = JSON.parse(text);
    } catch {
      return { is: "no-answer" };
    }
    const { status } = answer;
    if (answer.ok) {
      // Only our own "ok" empties the outbox: the log-in page of a hotel network answers 200 too.
      if (said?.ok === true) return { is: "sent", location: said.location, said: said.said };
      const toSignIn = answer.redirected && new URL(answer.url).pathname === "/sign-in";
      return { is: toSignIn ? "needs-sign-in" : "no-answer" };
    }
    // 409: somebody else is signed in by now.
    if ([401, 403, 409].includes(status)) return { is: "needs-sign-in", stop: status !== 403 };
    if (status >= 400 && status < 500 && !LATER.has(status)) {
      const general = { field: "", message: said?.message ?? "" };
      const mistakes = said?.mistakes?.length ? said.mistakes : [general];
      return { is: "refused", mistakes };
    }
    return { is: "server-trouble" };
  }

  function locked(work) {
    // Two tabs, or a tab and the worker, must not send the same entry at once.
    return "locks" in navigator ? navigator.locks.request("underfoot-outbox", work) : work();
  }

  // How it stands with a record. On a full phone the record stays as it was, and is tried again.
  const note = (record, change) => put({ ...record, ...change }).catch(() => {});

  // Sends what waits of who is signed in, oldest first, because a correction must not arrive before
  // what it corrects. Gives what became of each by its id.
  function sendAll() {
    return locked(async () => {
      const outcomes = new Map();
      for (const { id } of await of((await who()).writer)) {
        // Read again: it may have been thrown away since the list was made.
        const record = await get(id);
        if (!record || record.state === "refused") continue;
        const outcome = await post(record);
        outcomes.set(id, outcome);
        if (outcome.is === "sent") await remove(id, "sent");
        else if (outcome.is === "refused") {
          await note(record, { state: "refused", mistakes: outcome.mistakes });
        } else if (outcome.is === "needs-sign-in") await note(record, { state: "needs-sign-in" });
        else if (record.state !== "waiting") await note(record, { state: "waiting" });
        if (outcome.is === "no-answer" || outcome.stop) break;
      }
      return outcomes;
    });
  }

  const drafts = {
    put: (key, files) => act("drafts", "readwrite", (store) => store.put({ key, files })),
    get: (key) => act("drafts", "readonly", (store) => store.get(key)),
    remove: (key) => act("drafts", "readwrite", (store) => store.delete(key)),
  };

  self.underfootOutbox = {
    put,
    get,
    remove,
    all,
    of,
    post,
    sendAll,
    drafts,
    who,
    meet,
    leave,
    endSession,
    PAGES,
    PICTURES,
    onChange: (listener) => listeners.add(listener),
  };
})();
