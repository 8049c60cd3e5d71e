// The service worker: pages are read offline as they were kept, assets come from the phone, and
// the outbox is sent on after a page is left. It never answers a POST.
"use strict";

// Filled in by the server.
const HASH = "__HASH__";
const ASSETS = __ASSETS__;

importScripts(ASSETS.find((path) => path.endsWith("/outbox.js")));

const ASSET_CACHE = `assets-${HASH}`;
const PAGES = "pages";
const PICTURES = "pictures";
const OFFLINE = "/offline";
const MOST = { [PAGES]: 300, [PICTURES]: 60 };
const PATIENCE_MS = 4_000;
const FRESH_MS = 10 * 60_000;
const KEPT_AT = "x-kept-at";

// What a form is opened with, not which page it is.
const PASSING = ["x", "y", "said", "mend"];
const FORM_PAGE = /^\/slab\/[^/]+\/(add|fix)\//;
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
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
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
  const cache = await caches.open(PICTURES);
  const kept = await cache.match(event.request.url, { ignoreVary: true });
  if (kept) return kept;
  const answer = await fetch(event.request);
  if (answer.ok && !answer.redirected) event.waitUntil(store(PICTURES, event.request.url, answer.clone()));
  return answer;
}

// The address of the page itself, without the passing part.
function plainUrl(address) {
  const url = new URL(address, self.location.origin);
  url.hash = "";
  for (const name of PASSING) url.searchParams.delete(name);
  return url.href;
}

async function keptPage(address) {
  const cache = await caches.open(PAGES);
  const exact = await cache.match(plainUrl(address), { ignoreVary: true });
  if (exact) return exact;
  // A form is the same form whatever it is opened with; a page of a list is not.
  const { pathname } = new URL(address);
  if (!FORM_PAGE.test(pathname)) return undefined;
  return cache.match(pathname, { ignoreVary: true, ignoreSearch: true });
}

const isPage = (answer) =>
  answer.status === 200 &&
  answer.type === "basic" &&
  (answer.headers.get("content-type") ?? "").startsWith("text/html");

// A fresh Response: a navigation cannot be answered by one that was redirected, and the time it
// was kept has to be written on it. The body is unpacked already.
function rebuilt(answer) {
  const headers = new Headers(answer.headers);
  headers.delete("content-encoding");
  headers.delete("content-length");
  headers.set(KEPT_AT, String(Date.now()));
  return new Response(answer.body, { status: 200, headers });
}

async function store(name, address, answer) {
  const cache = await caches.open(name);
  await cache.put(address, rebuilt(answer));
  // Oldest first: what is put again goes to the end of the list.
  const keys = await cache.keys();
  for (const key of keys.slice(0, Math.max(0, keys.length - MOST[name]))) await cache.delete(key);
}

async function keepVisited(address, answer) {
  if (!isPage(answer) || NEVER_KEPT.test(new URL(address).pathname)) return;
  if (plainUrl(address) === address.split("#")[0]) await store(PAGES, address.split("#")[0], answer);
  // This one carries a message or a place of its own; keep the plain one in its stead.
  else await fetchToKeep(plainUrl(address));
}

async function answerPage(event) {
  const address = event.request.url;
  const asked = fetch(event.request);
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
  const pages = await caches.open(PAGES);
  const assets = await caches.open(ASSET_CACHE);
  const kept = (await pages.match(OFFLINE, { ignoreVary: true })) ?? (await assets.match(OFFLINE));
  return kept ?? Response.error();
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

async function fetchToKeep(address) {
  const picture = PICTURE.test(new URL(address).pathname);
  const answer = await fetch(address, {
    credentials: "same-origin",
    headers: { Accept: picture ? "image/*" : "text/html" },
  });
  const gone = answer.status === 404 || answer.status === 410;
  if (gone) await (await caches.open(picture ? PICTURES : PAGES)).delete(address);
  // A redirect to the sign-in page must not be kept in the place of the page.
  if (answer.redirected && NEVER_KEPT.test(new URL(answer.url).pathname)) return;
  if (picture ? answer.ok : isPage(answer)) await store(picture ? PICTURES : PAGES, address, answer);
}

async function keepList(list) {
  const now = Date.now();
  const person = signedOut;
  for (const path of list) {
    // Pages of the one who has just signed out must not come back.
    if (person !== signedOut) return;
    const address = plainUrl(path);
    const { origin, pathname } = new URL(address);
    if (origin !== self.location.origin || NEVER_KEPT.test(pathname)) continue;
    const cache = await caches.open(PICTURE.test(pathname) ? PICTURES : PAGES);
    const kept = await cache.match(address, { ignoreVary: true });
    if (kept && (PICTURE.test(pathname) || now - Number(kept.headers.get(KEPT_AT)) < FRESH_MS)) continue;
    await fetchToKeep(address);
  }
}

// One list after another, so that a weak connection is not asked for everything at once.
let keeping = Promise.resolve();

let signedOut = 0;

async function forgetPages() {
  signedOut += 1;
  await keeping;
  await caches.delete(PAGES);
  await caches.delete(PICTURES);
}

self.addEventListener("message", (event) => {
  const { data, source } = event;
  if (data.keep) {
    keeping = keeping.then(() => keepList(data.keep)).catch(() => {});
    event.waitUntil(keeping);
  }
  if (data.send) event.waitUntil(self.underfootOutbox.sendAll().catch(() => {}));
  if (data.was_kept) {
    const key = shown.has(source.id) ? source.id : source.url;
    source.postMessage({ kept: shown.get(key) ?? null, answers: "was_kept" });
    shown.delete(source.url);
  }
  if (data.forget) event.waitUntil(forgetPages().then(() => event.ports[0]?.postMessage("done")));
});

// Where the browser can wake the worker when the connection is back.
self.addEventListener("sync", (event) => {
  if (event.tag === "underfoot-outbox") event.waitUntil(sendOrAskAgain());
});

async function sendOrAskAgain() {
  const outcomes = await self.underfootOutbox.sendAll();
  const failed = [...outcomes.values()].some(({ is }) => is === "no-answer" || is === "server-trouble");
  // A refused promise makes the browser try again later.
  if (failed) throw new Error("some entries still wait");
}
