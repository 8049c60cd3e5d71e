// The service worker: pages are read offline as they were kept, assets come from the phone, and
// the outbox is sent on after a page is left. It never answers a POST. What is kept belongs to the
// person it was made for, and is shown only while that one is signed in on this phone.
"use strict";

// Filled in by the server.
const HASH = "__HASH__";
const ASSETS = __ASSETS__;

importScripts(ASSETS.find((path) => path.endsWith("/outbox.js")));

const ASSET_CACHE = `assets-${HASH}`;
const outbox = self.underfootOutbox;
const { PAGES, PICTURES } = outbox;
const OFFLINE = "/offline";
// A slab needs about eighty pages.
const MOST = { [PAGES]: 600, [PICTURES]: 60 };
const PATIENCE_MS = 4_000;
const FRESH_MS = 10 * 60_000;
const LASTING_MS = 12 * 3_600_000;
const KEPT_AT = "x-kept-at";
const KEPT_OF = "x-kept-of";
const WRITER = "x-writer";

// What a form is opened with, not which page it is.
const PASSING = ["x", "y", "said", "entry", "mend"];
const FORM_PAGE = /^\/slab\/[^/]+\/(add|fix)\//;
const SUM_PAGE = /^\/sums\/./;
// Changes only with the slab and with the program.
const LASTING = /^\/slab\/[^/]+\/((add|fix)\/|plan\/draw$)|^\/sums\/./;
const NEVER_KEPT = /^\/(sign-in|sign-out|set-up)(\/|$)|^\/s\/|\.pdf$/;
const PICTURE = /^\/slab\/[^/]+\/photo\//;

self.addEventListener("install", (event) => {
  event.waitUntil(
    (async () => {
      const cache = await caches.open(ASSET_CACHE);
      await cache.addAll(ASSETS);
      const page = await fetch(OFFLINE, { cache: "no-cache" });
      if (page.ok) await cache.put(OFFLINE, rebuilt(page));
      await self.skipWaiting();
    })(),
  );
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) {
        if (name.startsWith("assets-") && name !== ASSET_CACHE) await caches.delete(name);
      }
      await self.clients.claim();
    })(),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin) return;
  if (request.method === "POST" && request.mode === "navigate") {
    // Whoever signs in ends the session before on the server, so there is none left to end.
    if (url.pathname === "/sign-in") event.waitUntil(outbox.meet(""));
    if (url.pathname === "/sign-out") event.waitUntil(outbox.leave());
  }
  if (request.method !== "GET") return;
  if (request.mode === "navigate") event.respondWith(answerPage(event));
  else if (url.pathname.startsWith("/a/")) event.respondWith(answerAsset(request, url));
  else if (PICTURE.test(url.pathname)) event.respondWith(answerPicture(event));
});

// A kept page may be older than the assets: then the asset of the same name is the right one.
async function answerAsset(request, url) {
  const cache = await caches.open(ASSET_CACHE);
  const kept = await cache.match(url.pathname);
  if (kept) return kept;
  const name = url.pathname.replace(/^\/a\/[^/]+\//, "");
  const today = ASSETS.find((path) => path.replace(/^\/a\/[^/]+\//, "") === name);
  try {
    const answer = await fetch(request);
    if (answer.ok || !today) return answer;
  } catch (trouble) {
    if (!today) throw trouble;
  }
  return (await cache.match(today)) ?? Response.error();
}

async function answerPicture(event) {
  const kept = await keptOf(PICTURES, event.request.url);
  if (kept) return kept;
  const answer = await fetch(event.request);
  if (answer.ok && !answer.redirected) event.waitUntil(store(PICTURES, event.request.url, answer.clone()));
  return answer;
}

// The address of the page itself, without the passing part. A form is kept as it is when nothing is
// filled in: what it is opened with, the page fills in by itself, and nothing of an earlier opening.
function plainUrl(address) {
  const url = new URL(address, self.location.origin);
  url.hash = "";
  if (FORM_PAGE.test(url.pathname)) url.search = "";
  for (const name of PASSING) url.searchParams.delete(name);
  return url.href;
}

const writer = () => outbox.who().then((now) => now.writer).catch(() => null);

async function isTheirs(answer) {
  const made = answer.headers.get(WRITER);
  return Boolean(made) && made === (await writer());
}

// Nothing of what was kept for somebody else.
async function keptOf(name, address) {
  const kept = await (await caches.open(name)).match(address, { ignoreVary: true });
  return kept && (await isTheirs(kept)) ? kept : undefined;
}

async function keptPage(address) {
  const exact = await keptOf(PAGES, plainUrl(address));
  if (exact) return exact;
  // What was to be worked out stands in the address, and the blank form can show it.
  const { origin, pathname } = new URL(address);
  return SUM_PAGE.test(pathname) ? keptOf(PAGES, origin + pathname) : undefined;
}

const isPage = (answer) =>
  answer.status === 200 &&
  answer.type === "basic" &&
  (answer.headers.get("content-type") ?? "").startsWith("text/html");

// A fresh Response: a navigation cannot be answered by one that was redirected, and the time it
// was kept has to be written on it. The body is unpacked already.
function rebuilt(answer, version = "") {
  const headers = new Headers(answer.headers);
  headers.delete("content-encoding");
  headers.delete("content-length");
  headers.set(KEPT_AT, String(Date.now()));
  headers.set(KEPT_OF, version);
  return new Response(answer.body, { status: 200, headers });
}

async function store(name, address, answer, version) {
  if (!(await isTheirs(answer))) return;
  const cache = await caches.open(name);
  await cache.put(address, rebuilt(answer, version));
  // Oldest first: what is put again goes to the end of the list.
  const keys = await cache.keys();
  for (const key of keys.slice(0, Math.max(0, keys.length - MOST[name]))) await cache.delete(key);
}

async function keepVisited(address, answer) {
  const { pathname } = new URL(address);
  if (!isPage(answer) || NEVER_KEPT.test(pathname)) return;
  const plain = plainUrl(address);
  if (plain === address.split("#")[0]) await store(PAGES, plain, answer);
  // This one carries a message or a place of its own; keep the plain one in its stead.
  else if (FORM_PAGE.test(pathname)) await keepList([[plain, ""]], true, "");
  else await fetchToKeep(plain);
}

// Asks, once the session of who has signed out without signal is over on the server too.
async function askServer(request) {
  const now = await outbox.who().catch(() => null);
  if (now?.leaving && !(await outbox.endSession())) throw new Error("still signed in there");
  const answer = await fetch(request);
  const made = answer.headers.get(WRITER);
  // A full phone may fail to note who it is; then it keeps nothing for them.
  if (made && !NEVER_KEPT.test(new URL(request.url).pathname)) await outbox.meet(made).catch(() => {});
  return answer;
}

async function answerPage(event) {
  const address = event.request.url;
  const asked = askServer(event.request);
  const keeping = asked.then((answer) => keepVisited(address, answer.clone()));
  event.waitUntil(keeping.catch(() => {}));
  const late = new Promise((resolve) => setTimeout(resolve, PATIENCE_MS, null));
  try {
    const answer = await Promise.race([asked, late]);
    // 502 to 504: something in front of the server says that the server is away.
    if (answer && ![502, 503, 504].includes(answer.status)) return answer;
  } catch {
    return (await shownAsKept(event)) ?? (await offlinePage());
  }
  return (await shownAsKept(event)) ?? asked.catch(offlinePage);
}

async function offlinePage() {
  const assets = await caches.open(ASSET_CACHE);
  const kept = await keptOf(PAGES, self.location.origin + OFFLINE).catch(() => undefined);
  return kept ?? (await assets.match(OFFLINE)) ?? Response.error();
}

// Which windows show a kept page, and since when it is kept; they ask once they have loaded.
const shown = new Map();

async function shownAsKept(event) {
  const kept = await keptPage(event.request.url);
  if (!kept) return undefined;
  const at = Number(kept.headers.get(KEPT_AT)) || null;
  shown.set(event.resultingClientId || event.request.url, at);
  return kept;
}

const isPicture = (address) => PICTURE.test(new URL(address).pathname);
const cacheFor = (address) => (isPicture(address) ? PICTURES : PAGES);

async function fetchToKeep(address, version) {
  const picture = isPicture(address);
  const answer = await fetch(address, {
    credentials: "same-origin",
    headers: { Accept: picture ? "image/*" : "text/html" },
    signal: AbortSignal.timeout(30_000),
  });
  const gone = answer.status === 404 || answer.status === 410;
  if (gone) await (await caches.open(cacheFor(address))).delete(address);
  // A redirect to the sign-in page must not be kept in the place of the page.
  if (answer.redirected && NEVER_KEPT.test(new URL(answer.url).pathname)) return;
  if (picture ? answer.ok : isPage(answer)) await store(cacheFor(address), address, answer, version);
}

function isFresh(kept, address, version) {
  if (!kept) return false;
  if (isPicture(address)) return true;
  const age = Date.now() - Number(kept.headers.get(KEPT_AT));
  const lasting = LASTING.test(new URL(address).pathname) && kept.headers.get(KEPT_OF) === version;
  return age < (lasting ? LASTING_MS : FRESH_MS);
}

// Keeps a list of [address, name], fetching what is not there. Gives the names of what is missing
// afterwards, where they have one, and whether that is for want of room.
async function keepList(list, fetching, version) {
  const person = await writer();
  const missing = [];
  let full = false;
  for (const [path, name] of list) {
    const address = plainUrl(path);
    const { origin, pathname } = new URL(address);
    if (origin !== self.location.origin || NEVER_KEPT.test(pathname)) continue;
    let kept = await keptOf(cacheFor(address), address);
    if (fetching && !isFresh(kept, address, version)) {
      try {
        await fetchToKeep(address, version);
      } catch (trouble) {
        // Without a connection or without room the others will not come either.
        full = trouble.name === "QuotaExceededError";
        fetching = false;
      }
      // Pages of the one who has just signed out must not come back.
      if ((await writer()) !== person) return { missing: [], full: false };
      kept ??= await keptOf(cacheFor(address), address);
    }
    if (!kept && name) missing.push(name);
  }
  return { missing, full };
}

// One list after another, so that a weak connection is not asked for everything at once.
let keeping = Promise.resolve();

async function keepAndTell({ keep, fetching, version }, source) {
  const told = await keepList(keep, fetching, version);
  source.postMessage({ answers: "keep", ...told });
}

self.addEventListener("message", (event) => {
  const { data, source } = event;
  if (data.keep) {
    keeping = keeping.then(() => keepAndTell(data, source)).catch(() => {});
    event.waitUntil(keeping);
  }
  if (data.send) event.waitUntil(outbox.sendAll().catch(() => {}));
  if (data.was_kept) {
    const key = shown.has(source.id) ? source.id : source.url;
    source.postMessage({ kept: shown.get(key) ?? null, answers: "was_kept" });
    shown.delete(source.url);
  }
});

// Where the browser can wake the worker when the connection is back.
self.addEventListener("sync", (event) => {
  if (event.tag === "underfoot-outbox") event.waitUntil(sendOrAskAgain());
});

async function sendOrAskAgain() {
  const outcomes = await outbox.sendAll();
  const failed = [...outcomes.values()].some(({ is }) => is === "no-answer" || is === "server-trouble");
  // A refused promise makes the browser try again later.
  if (failed) throw new Error("some entries still wait");
}
