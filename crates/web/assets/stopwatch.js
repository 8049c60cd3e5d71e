// A stopwatch beside a field, such as the time a drop of water takes to soak in.
import { noteBeside, notedBeside } from "./drafts.js";
import { changedBySelf } from "./fields.js";
import { word } from "./words.js";

export function startStopwatch(box) {
  const form = box.closest("form");
  const field = form?.elements.namedItem(box.dataset.into);
  const start = box.querySelector("[data-start]");
  const stop = box.querySelector("[data-stop]");
  const output = box.querySelector("output");
  if (!field || !start || !stop || !output) return;
  const name = `stopwatch:${box.dataset.into}`;
  let since = null;
  let ticking = null;

  // From the start time, not by counting ticks: a phone in a pocket stops ticking.
  const seconds = () => Math.max(0, Math.round((Date.now() - since) / 1000));

  function show() {
    const all = seconds();
    const clock = `${Math.floor(all / 60)}:${String(all % 60).padStart(2, "0")}`;
    output.textContent = word("script-stopwatch-runs", { seconds: all, clock });
  }

  function run(from) {
    since = from;
    start.disabled = true;
    stop.disabled = false;
    show();
    ticking = setInterval(show, 250);
  }

  // The seconds are not read out each second; the field says the result.
  output.setAttribute("aria-live", "off");
  stop.disabled = true;
  start.addEventListener("click", () => {
    const now = Date.now();
    noteBeside(form, name, now);
    run(now);
    stop.focus();
  });
  stop.addEventListener("click", () => {
    clearInterval(ticking);
    show();
    field.value = `${seconds()} s`;
    since = null;
    start.disabled = false;
    stop.disabled = true;
    noteBeside(form, name, null);
    changedBySelf(form);
    field.focus();
  });
  box.hidden = false;
  const running = notedBeside(form, name);
  if (running) run(running);
}
