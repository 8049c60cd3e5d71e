// The entry module: finds what the page has and starts the part for it.
import { startBox } from "./box.js";
import { startCard } from "./card.js";
import { settlePosted, startDraft } from "./drafts.js";
import { startEntry } from "./entry.js";
import { fillFromAddress, startSum } from "./address.js";
import { canKeep, startKeeping } from "./keep.js";
import { startLook } from "./looks.js";
import { startMend } from "./mend.js";
import { startPhotographs } from "./photos.js";
import { startPerson, startSignOut, watchPerson } from "./person.js";
import { startPlan } from "./plan.js";
import { startQueue } from "./queue.js";
import { startRows } from "./rows.js";
import { saySaid, startCopy, startPrint } from "./small.js";
import { startStopwatch } from "./stopwatch.js";
import { startWork } from "./work.js";

const each = (selector, start, root = document) => root.querySelectorAll(selector).forEach(start);

document.documentElement.classList.add("js");

// Before anything is read back: what belongs to a form that was posted the plain way.
settlePosted();
saySaid();

each("[data-rows]", startRows);
each('input[type="file"][data-photo]', startPhotographs);
each("[data-card-mark]", startCard);
each("[data-plan]", startPlan);
each("form[data-look]", (form) => startLook(form, (into) => each("[data-plan]", startPlan, into)));
each("form[data-entry]", startEntry);
// Only where it is needed: it is no part of the first load.
each("[data-drops]", (box) => import("./drops.js").then(({ startDrops }) => startDrops(box)));
each("[data-copy]", startCopy);
each("[data-print]", startPrint);
each("[data-work]", startWork);
each("form[data-sign-out]", startSignOut);
each("form[data-sum]", startSum);

async function startForm(form) {
  const showMistakesOfRecord = await startMend(form);
  await startDraft(form);
  fillFromAddress(form);
  showMistakesOfRecord();
  each("[data-stopwatch]", startStopwatch, form);
  // The browser tests wait for this.
  form.dataset.ready = "yes";
}
each("form[data-entry], form[data-draft]", startForm);

if (canKeep()) {
  // At once, before anybody taps: it moves the page. On this very machine the line is safe.
  each("[data-no-offline]", (strip) => strip.remove());
  each("[data-outbox]", startBox);
  startQueue();
  watchPerson();
}
startPerson().then(startKeeping);
