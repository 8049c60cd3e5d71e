// Says what was wrong, beside each field and in a summary; everything typed stays.
import { make, word } from "./words.js";

let count = 0;

function idOf(element) {
  count += 1;
  element.id ||= `said-${count}`;
  return element.id;
}

// The server names the third control of the name "room_width[]" room_width[2].
const IN_ROW = /^(.+)\[(\d+)\]$/;

function controlOf(form, field) {
  const [, name, row] = field.match(IN_ROW) ?? [];
  if (name) return form.querySelectorAll(`[name="${CSS.escape(name)}[]"]`)[Number(row)] ?? null;
  const found =
    form.elements.namedItem(field) ??
    form.elements.namedItem(`${field}[]`) ??
    form.querySelector(`#field-${CSS.escape(field)} input`);
  // Several controls of one name (radio buttons, rows) come as a list.
  return found instanceof RadioNodeList ? found[0] : found;
}

const summaryOf = (form) =>
  form.querySelector("[data-mistakes]") ?? document.querySelector("[data-mistakes]");

export function clearMistakes(form) {
  for (const beside of form.querySelectorAll("[data-mistake-for]")) {
    beside.hidden = true;
    beside.textContent = "";
  }
  for (const control of form.querySelectorAll("[aria-invalid]")) {
    control.removeAttribute("aria-invalid");
    const rest = (control.getAttribute("aria-describedby") ?? "")
      .split(" ")
      .filter((id) => id && !document.getElementById(id)?.matches("[data-mistake-for]"));
    if (rest.length) control.setAttribute("aria-describedby", rest.join(" "));
    else control.removeAttribute("aria-describedby");
  }
  const summary = summaryOf(form);
  if (summary) {
    summary.hidden = true;
    summary.replaceChildren();
  }
}

function besideOf(form, control, field) {
  const [, name] = field.match(IN_ROW) ?? [];
  // Rows come and go, so the place of a mistake is looked for in the row of its control.
  if (name) return control?.closest("fieldset")?.querySelector(`[data-mistake-for="${name}[]"]`);
  return form.querySelector(`[data-mistake-for="${CSS.escape(field)}"]`);
}

function showBeside(form, control, { field, message }) {
  const beside = besideOf(form, control, field);
  if (beside) {
    // Two mistakes of one field stand one after the other.
    beside.textContent = [beside.textContent, message].filter(Boolean).join(" ");
    beside.hidden = false;
  }
  if (!control) return;
  control.setAttribute("aria-invalid", "true");
  if (!beside) return;
  const described = new Set((control.getAttribute("aria-describedby") ?? "").split(" "));
  described.delete("");
  described.add(idOf(beside));
  control.setAttribute("aria-describedby", [...described].join(" "));
}

// The name that the page gives a field, to tell it apart in the summary.
function nameOf(control) {
  const group = control?.matches("[type=radio], [type=checkbox]") || (control && !control.labels?.length);
  const named = group ? control.closest("fieldset")?.querySelector("legend") : control?.labels?.[0];
  return named?.firstChild?.textContent?.trim() ?? "";
}

function line(control, text) {
  const name = nameOf(control);
  const message = name && !text.includes(name) ? `${name}: ${text}` : text;
  if (!control || control.type === "hidden") return make("li", { text: message });
  const link = make("a", { href: `#${idOf(control)}`, text: message });
  link.addEventListener("click", (event) => {
    event.preventDefault();
    const fold = control.closest("details");
    if (fold) fold.open = true;
    control.focus();
  });
  return make("li", {}, link);
}

export function showMistakes(form, mistakes) {
  clearMistakes(form);
  const lines = mistakes.map((mistake) => {
    const message = mistake.message || word("script-refused-general");
    const control = mistake.field ? controlOf(form, mistake.field) : null;
    if (mistake.field) showBeside(form, control, { field: mistake.field, message });
    return line(control, message);
  });
  let summary = summaryOf(form);
  if (!summary) {
    summary = make("div", { "data-mistakes": "", role: "alert" });
    form.prepend(summary);
  }
  summary.replaceChildren(make("p", { text: word("script-mistakes-head") }), make("ul", {}, ...lines));
  summary.hidden = false;
  summary.tabIndex = -1;
  summary.focus();
}
