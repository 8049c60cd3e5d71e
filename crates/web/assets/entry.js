// An entry form: kept in the outbox first, then sent; the answer decides where to go.
import { clearDraft, rememberPosted, saveDraft, saveDraftPhotographs } from "./drafts.js";
import { actionPath, hiddenInput } from "./fields.js";
import { clearMistakes, showMistakes } from "./mistakes.js";
import { leaveIfOthers } from "./person.js";
import { copies, tooLarge } from "./photos.js";
import { leftOpen, recallZone, rememberZone } from "./place.js";
import { askToStay, handOver, sendKept, outbox } from "./queue.js";
import { entryId, localTime } from "./stamp.js";
import { canKeep, sayLater } from "./small.js";
import { word } from "./words.js";

function setSending(form, is) {
  form.dataset.sending = is ? "yes" : "";
  form.setAttribute("aria-busy", String(is));
  for (const button of form.querySelectorAll("button, input[type=submit]")) {
    // Buttons that were off before must not be switched on afterwards.
    if (is && !button.disabled) button.dataset.paused = "yes";
    if (button.dataset.paused) button.disabled = is;
    if (!is) delete button.dataset.paused;
  }
}

// Where the moment is asked for, an empty one is a mistake and not now.
const asksWhen = (form) => hiddenInput(form, "happened")?.dataset.missing !== undefined;

// The phone's times go in at the moment of sending: when it was noted, and when it happened
// unless the person said so.
function stamped(form, fields) {
  const now = localTime();
  return fields.map(([name, value]) => {
    if (name === "noted") return [name, now];
    if (name === "happened" && !value.trim() && !asksWhen(form)) return [name, now];
    return [name, value];
  });
}

async function recordOf(form, submitter) {
  const fields = [];
  const chosen = [];
  for (const [name, value] of new FormData(form, submitter)) {
    if (typeof value === "string") fields.push([name, value]);
    else if (value.size > 0) chosen.push([name, value]);
  }
  return {
    id: hiddenInput(form, "entry").value,
    writer: document.body.dataset.writer,
    action: actionPath(form, submitter),
    fields: stamped(form, fields),
    files: await copies(chosen),
    slab: document.body.dataset.slab ?? "",
    label: form.dataset.label ?? document.title,
    made: Date.now(),
    state: "waiting",
    mistakes: [],
  };
}

const samePlace = (path) =>
  typeof path === "string" && new URL(path, location.href).origin === location.origin;

function go(path) {
  const url = new URL(path, location.href);
  if (url.href.split("#")[0] === location.href.split("#")[0]) location.reload();
  else location.assign(url.href);
}

function nextOf(form, action) {
  const next = hiddenInput(form, "next")?.value;
  if (next && samePlace(next)) return next;
  const slab = action.match(/^\/slab\/[^/]+/);
  return slab ? `${slab[0]}/diary` : "/";
}

async function afterKept(form, action) {
  askToStay();
  await handOver();
  if (navigator.serviceWorker?.controller) {
    sayLater(word("script-kept-on-phone"));
    go(nextOf(form, action));
    return;
  }
  // Nothing would answer for the next page yet, so stay here with an empty form.
  form.reset();
  hiddenInput(form, "entry").value = entryId();
  delete form.dataset.sent;
  setSending(form, false);
  document.querySelector("[data-outbox]")?.scrollIntoView();
}

async function refuse(form, record, mistakes) {
  delete form.dataset.sent;
  setSending(form, false);
  saveDraft(form);
  await saveDraftPhotographs(form);
  // Only now: what was typed is kept as a draft again. A mended record stays in the box, and so does
  // one that the phone has no room to keep as a draft.
  if (!form.dataset.mends && !form.dataset.unsaved) await outbox.remove(record.id);
  showMistakes(form, mistakes);
}

const askBeforeLeaving = (event) => event.preventDefault();

// The phone could not keep the entry: it is sent at once, or said that it is neither kept nor sent.
// Then this form is the only place that has it.
async function sendUnkept(form, record, trouble) {
  const outcome = await outbox.post(record);
  if (outcome.is === "sent") {
    form.dataset.sent = "yes";
    await clearDraft(form);
    goAfterSent(form, record, outcome);
    return;
  }
  setSending(form, false);
  addEventListener("beforeunload", askBeforeLeaving);
  const full = trouble?.name === "QuotaExceededError";
  const message = word(full ? "script-no-room" : "script-cannot-store");
  showMistakes(form, outcome.is === "refused" ? outcome.mistakes : [{ field: "", message }]);
}

function goAfterSent(form, record, { said, location }) {
  removeEventListener("beforeunload", askBeforeLeaving);
  if (said) sayLater(said);
  go(samePlace(location) ? location : nextOf(form, record.action));
}

function fillStamps(form) {
  for (const name of ["noted", "happened"]) {
    const input = hiddenInput(form, name);
    if (input && (name === "noted" || (!input.value.trim() && !asksWhen(form)))) input.value = localTime();
  }
}

async function submit(form, submitter) {
  const wrong = [...leftOpen(form), ...tooLarge(form)];
  if (wrong.length) {
    showMistakes(form, wrong);
    return;
  }
  clearMistakes(form);
  rememberZone(form);
  // Read before the buttons are switched off: a button that is off has no value to send.
  const reading = recordOf(form, submitter);
  setSending(form, true);
  let record;
  try {
    record = await reading;
  } catch {
    setSending(form, false);
    showMistakes(form, [{ field: "photographs", message: word("script-photograph-unreadable") }]);
    return;
  }
  // What was typed stays as a draft of the one whose page this was.
  if (await leaveIfOthers()) return;
  try {
    await outbox.put(record);
  } catch (trouble) {
    await sendUnkept(form, record, trouble);
    return;
  }
  removeEventListener("beforeunload", askBeforeLeaving);
  // The outbox has it now. A draft left behind would come back later under a used-up id.
  form.dataset.sent = "yes";
  await clearDraft(form);
  const outcome = await sendKept(record);
  if (outcome.is === "refused") {
    await refuse(form, record, outcome.mistakes);
  } else if (outcome.is === "sent") {
    goAfterSent(form, record, outcome);
  } else {
    await afterKept(form, record.action);
  }
}

// Enter in a field means "write it", never the first of the one-tap answers above it.
function guardEnter(form) {
  form.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || event.target.tagName !== "INPUT" || event.isComposing) return;
    if (["submit", "button", "file", "checkbox", "radio"].includes(event.target.type)) return;
    const main = [...form.elements].find((button) => button.type === "submit" && !button.name);
    if (!form.querySelector('button[name="preset"]')) return;
    event.preventDefault();
    if (main) form.requestSubmit(main);
  });
}

export function startEntry(form) {
  guardEnter(form);
  recallZone(form);
  form.addEventListener("submit", (event) => {
    if (form.dataset.sending) {
      event.preventDefault();
      return;
    }
    if (canKeep() && hiddenInput(form, "entry")) {
      event.preventDefault();
      submit(form, event.submitter);
      return;
    }
    const wrong = [...leftOpen(form), ...tooLarge(form)];
    if (wrong.length) {
      event.preventDefault();
      showMistakes(form, wrong);
      return;
    }
    fillStamps(form);
    rememberPosted(form);
    setTimeout(() => setSending(form, true));
  });
  // Back to a page the browser had frozen: its form was sent, and a new entry needs a new id.
  addEventListener("pageshow", (event) => {
    if (event.persisted && (form.dataset.sent || form.dataset.sending)) location.reload();
  });
}
