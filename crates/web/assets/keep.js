// Reading offline: registers the worker, tells it what to keep, and says when a page is a kept one.
import { clock, word } from "./words.js";

// Whether entries can wait on this phone and pages can be kept.
export function canKeep() {
  return (
    isSecureContext &&
    document.body.dataset.secure !== "no" &&
    "serviceWorker" in navigator &&
    "indexedDB" in self
  );
}

function showKept(at) {
  const line = document.querySelector("[data-kept]");
  if (!line) return;
  line.textContent = word("script-kept-page", { time: clock(at) });
  line.hidden = false;
}

// Whether this page came from the phone; null when it came from the server.
function askWhenKept(worker) {
  return new Promise((resolve) => {
    const listen = (event) => {
      if (event.data?.answers !== "was_kept") return;
      navigator.serviceWorker.removeEventListener("message", listen);
      resolve(event.data.kept);
    };
    navigator.serviceWorker.addEventListener("message", listen);
    navigator.serviceWorker.startMessages();
    worker.postMessage({ was_kept: true });
    setTimeout(resolve, 3_000, null);
  });
}

function listToKeep() {
  try {
    const list = JSON.parse(document.body.dataset.keep || "[]");
    // The first page of a visit was loaded before there was a worker to keep it.
    return [location.pathname + location.search, ...list, "/offline"];
  } catch {
    return [];
  }
}

export async function startKeeping() {
  if (!canKeep()) {
    const line = document.querySelector("[data-no-offline]");
    if (line) line.hidden = false;
    return;
  }
  const { controller } = navigator.serviceWorker;
  const kept = controller ? await askWhenKept(controller) : null;
  if (kept) showKept(kept);
  try {
    await navigator.serviceWorker.register("/sw.js", { updateViaCache: "none" });
  } catch {
    // No connection, or the browser forbids it; what is there goes on working.
    return;
  }
  // Asking for more while there is no connection would only cost battery.
  if (kept) return;
  const { active } = await navigator.serviceWorker.ready;
  active.postMessage({ keep: listToKeep() });
}

// What the next person on this phone must not read: kept pages go, waiting entries stay.
export function startSignOut(form) {
  form.addEventListener("submit", async (event) => {
    const worker = navigator.serviceWorker?.controller;
    if (!worker) return;
    event.preventDefault();
    const { port1, port2 } = new MessageChannel();
    const done = new Promise((resolve) => {
      port1.onmessage = resolve;
      setTimeout(resolve, 2_000);
    });
    worker.postMessage({ forget: true }, [port2]);
    await done;
    HTMLFormElement.prototype.submit.call(form);
  });
}
