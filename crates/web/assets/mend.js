// Mending a refused entry: its form is opened with ?mend=<id> and filled from the waiting record.
import { actionPath, fillPairs, hiddenInput } from "./fields.js";
import { showMistakes } from "./mistakes.js";
import { givePhotographs } from "./photos.js";
import { outbox } from "./queue.js";

// Before the drafts: the form then has a draft of its own. Gives what shows the mistakes, for
// after them.
export async function startMend(form) {
  const id = new URLSearchParams(location.search).get("mend");
  if (!id) return () => {};
  const record = await outbox.get(id).catch(() => null);
  if (record?.writer !== document.body.dataset.writer || record.action !== actionPath(form)) return () => {};
  form.dataset.mends = id;
  fillPairs(form, record.fields);
  const entry = hiddenInput(form, "entry");
  if (entry) entry.value = record.id;
  givePhotographs(form, record.files);
  return () => showMistakes(form, record.mistakes);
}
