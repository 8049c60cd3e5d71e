// The entry module: finds what the page has and fetches only the parts for it.
import { canKeep, openFolds, saySaid, startCopy } from "./small.js";

const page = document.documentElement;
page.classList.add("js");
saySaid();
openFolds();
// At once, before anybody taps: it moves the page. On this very machine the line is safe.
if (canKeep()) document.querySelectorAll("[data-no-offline]").forEach((strip) => strip.remove());

const all = (selector, root = document) => [...root.querySelectorAll(selector)];
const aForm = "form[data-entry], form[data-draft]";

const startPlans = async (root) => {
  const found = all("[data-plan]", root);
  if (!found.length) return;
  const { startPlan } = await import("./plan.js");
  found.forEach(startPlan);
};

async function startForms(forms) {
  const [{ startDraft }, { startMend }, { fillFromAddress }] = await Promise.all([
    import("./drafts.js"),
    import("./mend.js"),
    import("./address.js"),
  ]);
  const start = async (form) => {
    const showMistakesOfRecord = await startMend(form);
    await startDraft(form);
    fillFromAddress(form);
    showMistakesOfRecord();
    for (const box of all("[data-stopwatch]", form)) (await import("./stopwatch.js")).startStopwatch(box);
    // The browser tests wait for this.
    form.dataset.ready = "yes";
  };
  await Promise.all(forms.map(start));
}

// What a part is for, how it is fetched, how it starts. They start in this order.
const PARTS = [
  ["[data-rows]", () => import("./rows.js"), (part, found) => found.forEach(part.startRows)],
  ['input[type="file"][data-photo]', () => import("./photos.js"), (part, found) => found.forEach(part.startPhotographs)],
  ["[data-card-mark]", () => import("./card.js"), (part, found) => found.forEach(part.startCard)],
  ["[data-plan]", () => import("./plan.js"), (part, found) => found.forEach(part.startPlan)],
  ["form[data-look]", () => import("./looks.js"), (part, found) => found.forEach((form) => part.startLook(form, startPlans))],
  ["form[data-entry]", () => import("./entry.js"), (part, found) => found.forEach(part.startEntry)],
  ["[data-drops]", () => import("./drops.js"), (part, found) => found.forEach(part.startDrops)],
  ["form[data-sum]", () => import("./address.js"), (part, found) => found.forEach(part.startSum)],
  ["[data-work]", () => import("./work.js"), (part, found) => found.forEach(part.startWork)],
  [aForm, () => import("./drafts.js"), (_, found) => startForms(found)],
];

async function startParts() {
  // Before anything is read back: what belongs to a form that was posted the plain way.
  if (sessionStorage.getItem("underfoot-posted")) (await import("./drafts.js")).settlePosted();
  all("[data-copy]").forEach(startCopy);
  // All are asked for at once, since each way over the line takes its time.
  const here = PARTS.map(([selector, load, start]) => ({ found: all(selector), load, start }))
    .filter(({ found }) => found.length)
    .map(({ found, load, start }) => ({ found, start, coming: load() }));
  for (const { found, start, coming } of here) await start(await coming, found);
}

async function startKept() {
  const [{ startKeeping }, { startPerson, startSignOut, watchPerson }] = await Promise.all([
    import("./keep.js"),
    import("./person.js"),
  ]);
  all("form[data-sign-out]").forEach(startSignOut);
  if (canKeep()) {
    const [{ startBox }, { startQueue }] = await Promise.all([import("./box.js"), import("./queue.js")]);
    all("[data-outbox]").forEach(startBox);
    startQueue();
    watchPerson();
  }
  await startKeeping(await startPerson());
}

// A part that fails is told of and keeps no other from its work.
await startParts().catch(reportError);
// The browser tests wait for this too.
page.dataset.started = "yes";
await startKept();
