// What an address says beside the page: a form that came from the phone was kept blank, so the script
// fills in what the server would have.
import { changedBySelf, fillPairs } from "./fields.js";
import { choosePoint } from "./plan.js";
import { make, word } from "./words.js";

// The server fills in the same ones.
const GIVEN = ["radius", "of", "panel", "state", "next"];

// Something the form did not know of when it was kept, such as the newest zone or spill, is offered
// too: left out, the entry would speak of something else.
function offer(control, value, text) {
  if (control.tagName === "SELECT") control.append(make("option", { value, text }));
  else {
    const radio = make("input", { type: "radio", name: control.name, value });
    control.closest(".chips")?.append(make("label", { class: "chip" }, radio, make("span", { text })));
  }
}

function give(form, name, value, text = value) {
  const [control] = form.querySelectorAll(`[name="${name}"]`);
  if (!control) return;
  const radios = control.type === "radio";
  const offered = [...(radios ? form.querySelectorAll(`[name="${name}"]`) : (control.options ?? []))];
  if ((radios || control.options) && !offered.some((one) => one.value === value)) offer(control, value, text);
  // A list of radio buttons takes its value as a whole.
  form.elements.namedItem(name).value = value;
}

function choosePlace(form, asked) {
  const [x, y] = ["x", "y"].map((name) => form.elements.namedItem(name));
  if (asked.has("x") && asked.has("y") && x && y) {
    x.value = asked.get("x");
    y.value = asked.get("y");
    choosePoint(form);
  } else if (asked.has("zone")) {
    give(form, "place_kind", `zone:${asked.get("zone")}`, asked.get("zone"));
  }
}

// What was tapped is newer than any draft.
export function fillFromAddress(form) {
  const asked = new URLSearchParams(location.search);
  if (form.dataset.typed === "server" || form.dataset.mends) return;
  if (![...GIVEN, "x", "zone"].some((name) => asked.has(name))) return;
  choosePlace(form, asked);
  for (const name of GIVEN) if (asked.has(name)) give(form, name, asked.get(name));
  // Nobody has typed it: a draft of it would come back in a form that is opened for nothing.
  form.dataset.filling = "yes";
  changedBySelf(form);
  delete form.dataset.filling;
}

function sayOnForm(form, key) {
  const line = make("p", { class: "mistakes", role: "alert", "data-cannot-sum": "", text: word(key) });
  form.querySelector("[data-cannot-sum]")?.remove();
  form.prepend(line);
  line.scrollIntoView({ block: "center" });
}

// A calculation is worked out by the server. Without it the form says so and keeps what was typed.
export function startSum(form) {
  const asked = new URLSearchParams(location.search);
  if (asked.size && form.dataset.sum === "blank") {
    // Bare numbers that were meant in other units would be read wrong here.
    if (asked.get("measure") === form.elements.namedItem("measure")?.value) fillPairs(form, [...asked]);
    sayOnForm(form, "script-sum-needs-signal");
  }
  // A file is sent, and no worker answers for that.
  if (form.method !== "post") return;
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    try {
      await fetch("/sw.js", { method: "HEAD", cache: "no-store" });
      HTMLFormElement.prototype.submit.call(form);
    } catch {
      sayOnForm(form, "script-sum-needs-signal");
    }
  });
}
