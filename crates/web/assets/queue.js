// When the outbox is sent: at submit, on load, when the network is back, when the page is looked
// at again, every half minute while something waits, and by the button.
import "./outbox.js";

export const outbox = self.underfootOutbox;

const PATIENCE_MS = 10_000;
const EVERY_MS = 30_000;

const after = (ms) => new Promise((resolve) => setTimeout(resolve, ms, null));

// The worker goes on sending after this page is left; the browser may also wake it up by itself.
export async function handOver() {
  const worker = navigator.serviceWorker?.controller;
  worker?.postMessage({ send: true });
  try {
    const registration = worker ? await navigator.serviceWorker.getRegistration() : null;
    await registration?.sync?.register("underfoot-outbox");
  } catch {
    // Background sync was refused; the other occasions remain.
  }
}

// Asked once something has to wait, so that the browser does not clear it when space is short.
export async function askToStay() {
  try {
    await navigator.storage?.persist?.();
  } catch {
    // The record is kept all the same.
  }
}

// Tries to send a record the outbox has. Gives its outcome; "waits" when there was none in time.
export async function sendKept(record) {
  const outcomes = await Promise.race([outbox.sendAll().catch(() => null), after(PATIENCE_MS)]);
  const outcome = outcomes?.get(record.id);
  if (outcome && ["sent", "refused", "needs-sign-in"].includes(outcome.is)) return outcome;
  // Another tab or the worker may have sent it meanwhile.
  const now = await outbox.get(record.id);
  if (!now) return { is: "sent" };
  if (now.state === "refused") return { is: "refused", mistakes: now.mistakes };
  return { is: "waits" };
}

// After a pass that is running already comes another: what stopped that one may be mended by now.
export async function sendNow() {
  const records = await outbox.of((await outbox.who()).writer);
  if (records.some((record) => record.state !== "refused")) await outbox.sendAll();
}

let sending = false;

// A failure here is no more than "not sent yet", which the box shows already.
async function sendQuietly() {
  if (sending) return;
  sending = true;
  await sendNow().catch(() => {});
  sending = false;
}

export function startQueue() {
  addEventListener("online", sendQuietly);
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") sendQuietly();
  });
  setInterval(sendQuietly, EVERY_MS);
  sendQuietly();
}
