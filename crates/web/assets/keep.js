// Reading offline: registers the worker, tells it what to keep, says when a page is a kept one and
// whether all of a slab is on this phone.
import { canKeep } from "./small.js";
import { clock, word } from "./words.js";

const NAMES_SHOWN = 6;

function showKept(at) {
  const line = document.querySelector("[data-kept]");
  if (!line) return;
  line.textContent = word("script-kept-page", { time: clock(at) });
  line.hidden = false;
}

// Resolves with the worker's message of this name; with null when it says nothing for so long.
function answerOf(worker, name, ask, patience) {
  return new Promise((resolve) => {
    const listen = ({ data }) => {
      if (data?.answers !== name) return;
      navigator.serviceWorker.removeEventListener("message", listen);
      resolve(data);
    };
    navigator.serviceWorker.addEventListener("message", listen);
    navigator.serviceWorker.startMessages();
    worker.postMessage(ask);
    if (patience) setTimeout(resolve, patience, null);
  });
}

// When this page was kept on the phone; null when it came from the server.
export async function keptSince() {
  const worker = canKeep() ? navigator.serviceWorker.controller : null;
  return worker ? ((await answerOf(worker, "was_kept", { was_kept: true }, 3_000))?.kept ?? null) : null;
}

// Pairs of address and name.
function listToKeep() {
  try {
    return JSON.parse(document.body.dataset.keep || "[]");
  } catch {
    return [];
  }
}

// Said where a person looks before going to the site; what went wrong is said on every page.
function say(key, holes = {}) {
  const own = document.querySelector("[data-keeping=state]");
  const strip = document.querySelector("[data-keeping=trouble]");
  const trouble = key !== "script-keeping" && key !== "script-all-kept";
  const line = own ?? (trouble ? strip : null);
  if (!line) return;
  line.dataset.says = key;
  line.textContent = word(key, holes);
  line.hidden = false;
}

function sayMissing(key, missing) {
  const shown = missing.slice(0, NAMES_SHOWN).join(", ");
  const rest = missing.length - NAMES_SHOWN;
  say(key, { names: rest > 0 ? `${shown} (+${rest})` : shown });
}

const allNames = () => listToKeep().map(([, name]) => name);

async function register() {
  const registration = await navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" });
  const { installing, active } = registration;
  if (!installing || active) return;
  // A phone without room refuses the worker itself.
  installing.addEventListener("statechange", () => {
    if (installing.state === "redundant") sayMissing("script-no-room-pages", allNames());
  });
}

// `kept` is when this page was kept; asking for more without a connection would only cost battery.
export async function startKeeping(kept) {
  if (!canKeep()) return;
  if (kept) showKept(kept);
  const list = listToKeep();
  const slow = setTimeout(() => list.length && !kept && say("script-keeping"), 800);
  try {
    await register();
  } catch {
    // No connection, or the browser forbids it; what is there goes on working.
    clearTimeout(slow);
    if (!kept) {
      if (list.length) sayMissing("script-not-kept", allNames());
      return;
    }
  }
  const { active } = await navigator.serviceWorker.ready;
  // The first page of a visit was loaded before there was a worker to keep it. Without a name, what
  // is missing is not told.
  const here = [location.pathname + location.search, ""];
  const { slab, version } = document.body.dataset;
  const ask = { keep: [...list, here, ["/offline", ""]], fetching: !kept, version };
  const told = await answerOf(active, "keep", ask);
  clearTimeout(slow);
  if (!slab || !list.length) return;
  if (!told.missing.length) say("script-all-kept");
  else sayMissing(told.full ? "script-no-room-pages" : "script-not-kept", told.missing);
}
