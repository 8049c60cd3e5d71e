// Several people on one phone: a page belongs to the person it was made for, and so does what is
// written on it.
import { keptSince } from "./keep.js";
import { canKeep } from "./small.js";
import { outbox } from "./queue.js";
import { make, word } from "./words.js";

// The person this page was made for; "" when nobody was signed in. A page for whoever holds the
// phone, such as that for "no signal", says none.
const madeFor = () => document.body.dataset.writer;

// Whose entries this page may show.
export async function writerHere() {
  return madeFor() ?? (await outbox.who().catch(() => null))?.writer ?? "";
}

let signingOut = false;
let settled = Promise.resolve();

// Tells the phone whose page has come from the server, and ends a session that is still to be
// ended. Gives when this page was kept, if it was.
export function startPerson() {
  settled = meetPerson();
  return settled;
}

async function meetPerson() {
  if (!canKeep()) return null;
  const kept = await keptSince();
  if (madeFor() === undefined) await showSignedOut();
  else await noteWhosePage(kept);
  return kept;
}

async function noteWhosePage(kept) {
  const writer = madeFor();
  // On a full phone nothing can be noted; the server still knows who is who.
  if (!kept) await outbox.meet(writer).catch(() => {});
  const now = await outbox.who().catch(() => null);
  if (now?.leaving && writer) await leavePage(now);
}

async function showSignedOut() {
  const now = await outbox.who().catch(() => null);
  if (now?.writer !== "") return;
  for (const part of document.querySelectorAll("[data-offline] > *")) part.hidden = !part.matches("[data-signed-out]");
}

async function leavePage(now) {
  if (now.leaving && !(await outbox.endSession())) {
    document.querySelector("main").replaceChildren(make("p", { text: word("script-signed-out") }));
    return;
  }
  location.replace("/");
}

// A page that was left open, or brought back by "back", after its person has signed out.
export async function leaveIfOthers() {
  const writer = madeFor();
  await settled;
  const now = await outbox.who().catch(() => null);
  if (signingOut) return true;
  if (!writer || !now || now.writer === null || now.writer === writer) return false;
  await leavePage(now);
  return true;
}

export function watchPerson() {
  outbox.onChange((how) => how === "person" && leaveIfOthers());
  addEventListener("pageshow", ({ persisted }) => persisted && leaveIfOthers());
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && leaveIfOthers());
}

// With or without signal: the phone forgets who was signed in and what was kept for them. What
// waits stays for them; the session on the server ends at the next contact.
export function startSignOut(form) {
  form.addEventListener("submit", async (event) => {
    if (!canKeep()) return;
    event.preventDefault();
    const waiting = await outbox.of(madeFor()).catch(() => []);
    if (waiting.length && !confirm(word("script-sign-out-waiting", { count: waiting.length }))) return;
    signingOut = true;
    try {
      await outbox.leave();
    } catch {
      HTMLFormElement.prototype.submit.call(form);
      return;
    }
    // The worker ends the session before it asks for another page.
    if (!navigator.serviceWorker.controller) await outbox.endSession();
    location.replace("/sign-in");
  });
}
