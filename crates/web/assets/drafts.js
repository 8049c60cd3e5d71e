// Nothing typed is lost by a reload: what stands in a form[data-draft] is kept on the phone until
// it has been handed to the outbox. Texts in localStorage, chosen photographs in IndexedDB.
import { fillPairs, hiddenInput, typedPairs } from "./fields.js";
import { copies, givePhotographs, photographInputs } from "./photos.js";
import { outbox } from "./queue.js";
import { entryId } from "./stamp.js";
import { make, word } from "./words.js";

const POSTED = "underfoot-posted";

// A draft belongs to the person who typed it; the next one on this phone begins with a blank form.
// A form that mends a waiting record has a draft of its own, so that it does not overwrite what
// was typed for a new entry of the same kind.
export function draftKey(form) {
  const what = form.dataset.mends ? `mend:${form.dataset.mends}` : form.dataset.draft;
  return what ? `${document.body.dataset.writer}:${what}` : null;
}

function read(key) {
  try {
    return JSON.parse(localStorage.getItem(`draft:${key}`)) ?? null;
  } catch {
    return null;
  }
}

// Which part of a form could not be kept, the texts or the photographs.
const unsaved = new Set();

// Storage is full or forbidden: the form still works, it only forgets when it is left, and says so.
function noteSaved(form, part, is) {
  if (is) unsaved.delete(part);
  else unsaved.add(part);
  let line = form.querySelector("[data-unsaved]");
  if (!line && unsaved.size) {
    line = make("p", { class: "mistakes", role: "alert", "data-unsaved": "" });
    form.prepend(line);
  }
  if (!line) return;
  form.dataset.unsaved = unsaved.size ? "yes" : "";
  line.textContent = unsaved.size ? word("script-unsaved") : "";
  line.hidden = !unsaved.size;
}

function write(form, key, draft) {
  try {
    localStorage.setItem(`draft:${key}`, JSON.stringify(draft));
    noteSaved(form, "texts", true);
  } catch {
    noteSaved(form, "texts", false);
  }
}

// Things beside the fields, such as when the stopwatch was started.
export function noteBeside(form, name, value) {
  const key = draftKey(form);
  if (!key) return;
  const draft = read(key) ?? { fields: typedPairs(form), entry: hiddenInput(form, "entry")?.value };
  write(form, key, { ...draft, beside: { ...draft.beside, [name]: value } });
}

export function notedBeside(form, name) {
  const key = draftKey(form);
  return (key && read(key)?.beside?.[name]) ?? null;
}

export function saveDraft(form) {
  const key = draftKey(form);
  if (!key) return;
  const entry = hiddenInput(form, "entry")?.value;
  write(form, key, { fields: typedPairs(form), entry, beside: read(key)?.beside });
}

// Copying a photograph takes a moment; one after another, so that the last choice is what stays.
let photographsWork = Promise.resolve();

export function saveDraftPhotographs(form) {
  const key = draftKey(form);
  if (!key) return photographsWork;
  saveDraft(form);
  const chosen = photographInputs(form).flatMap((input) =>
    [...input.files].map((file) => [input.name, file]),
  );
  photographsWork = photographsWork
    .then(async () => {
      if (chosen.length) await outbox.drafts.put(key, await copies(chosen));
      else await outbox.drafts.remove(key);
      noteSaved(form, "photographs", true);
    })
    .catch(() => noteSaved(form, "photographs", false));
  return photographsWork;
}

export function clearDraft(form) {
  return forget(draftKey(form));
}

function forget(key) {
  if (!key) return Promise.resolve();
  localStorage.removeItem(`draft:${key}`);
  photographsWork = photographsWork.then(() => outbox.drafts.remove(key)).catch(() => {});
  return photographsWork;
}

// Without the outbox a form is posted by the browser, and only the next page shows how it went.
export function rememberPosted(form) {
  const key = draftKey(form);
  if (key) sessionStorage.setItem(POSTED, key);
}

export function settlePosted() {
  const key = sessionStorage.getItem(POSTED);
  if (!key) return;
  sessionStorage.removeItem(POSTED);
  const [arrival] = performance.getEntriesByType("navigation");
  // Back from the browser's own "no connection" page: nothing was sent.
  if (arrival && arrival.type !== "navigate") return;
  const refused = [...document.querySelectorAll('form[data-typed="server"]')];
  if (!refused.some((form) => draftKey(form) === key)) forget(key);
}

function showRestored(form) {
  let line = form.querySelector("[data-restored]");
  if (!line) {
    line = make("p", { "data-restored": "" });
    form.prepend(line);
  }
  const afresh = make("button", { type: "button", text: word("script-start-afresh") });
  afresh.addEventListener("click", async () => {
    form.dataset.afresh = "yes";
    await clearDraft(form);
    // Some browsers put typed text back on reload unless the form was emptied first.
    form.reset();
    location.reload();
  });
  line.replaceChildren(make("span", { text: word("script-restored") }), " ", afresh);
  line.setAttribute("role", "status");
  line.hidden = false;
}

async function restorePhotographs(form) {
  const kept = await outbox.drafts.get(draftKey(form)).catch(() => null);
  if (!kept?.files.length) return false;
  givePhotographs(form, kept.files);
  return true;
}

// Gives the form its entry id and, when the form is as served, what had been typed.
export async function startDraft(form) {
  const key = draftKey(form);
  const typedByServer = form.dataset.typed === "server";
  const entry = hiddenInput(form, "entry");
  let draft = key ? read(key) : null;
  if (draft?.entry && !form.dataset.mends && (await outbox.get(draft.entry).catch(() => null))) {
    // It lies in the outbox already; typing it a second time would be the same entry.
    await forget(key);
    draft = null;
  }
  if (entry && !typedByServer && !form.dataset.mends) entry.value = draft?.entry || entryId();
  if (!key) return;
  let restored = false;
  if (draft && !typedByServer) {
    fillPairs(form, draft.fields ?? []);
    restored = true;
  }
  // The server can refill texts but never photographs.
  if (draft || typedByServer) restored = (await restorePhotographs(form)) || restored;
  if (restored && !typedByServer) showRestored(form);
  const save = () => {
    if (!form.dataset.afresh && !form.dataset.sent && !form.dataset.filling) saveDraft(form);
  };
  form.addEventListener("input", save);
  form.addEventListener("change", save);
  form.addEventListener("photographs", (event) => {
    if (!event.detail.restored) saveDraftPhotographs(form);
  });
}
