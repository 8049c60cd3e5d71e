// Reading what was typed out of a form, and putting it back.
import { ensureRows } from "./rows.js";

const NOT_TYPED = new Set(["hidden", "file", "password", "submit", "button", "reset", "image"]);
const TYPED_TAGS = new Set(["INPUT", "SELECT", "TEXTAREA"]);

export function typedControls(form) {
  return [...form.elements].filter(
    (control) => control.name && TYPED_TAGS.has(control.tagName) && !NOT_TYPED.has(control.type),
  );
}

const isTick = (control) => control.type === "checkbox" || control.type === "radio";

export function typedPairs(form) {
  const pairs = [];
  for (const control of typedControls(form)) {
    if (isTick(control)) {
      if (control.checked) pairs.push([control.name, control.value]);
    } else if (control.type === "select-multiple") {
      for (const option of control.selectedOptions) pairs.push([control.name, option.value]);
    } else {
      pairs.push([control.name, control.value]);
    }
  }
  return pairs;
}

function grouped(pairs) {
  const values = new Map();
  for (const [name, value] of pairs) values.set(name, [...(values.get(name) ?? []), value]);
  return values;
}

// Fields the pairs say nothing of stay as they are, except boxes: an unticked box leaves no pair.
export function fillPairs(form, pairs) {
  const values = grouped(pairs);
  for (const [name, list] of values) if (name.endsWith("[]")) ensureRows(form, name, list.length);
  for (const control of typedControls(form)) {
    const list = values.get(control.name);
    if (control.type === "checkbox") control.checked = list?.includes(control.value) ?? false;
    else if (control.type === "radio") {
      if (list) control.checked = list.includes(control.value);
    } else if (control.type === "select-multiple") {
      for (const option of control.options) option.selected = list?.includes(option.value) ?? false;
    } else if (list?.length) control.value = list.shift();
  }
  changedBySelf(form);
}

// One event for the whole form: the drawings and sums that follow what is typed listen to it.
export function changedBySelf(form) {
  form.dispatchEvent(new Event("input", { bubbles: true }));
}

// `form.action` would be the input of that name, if there is one.
export function actionPath(form, submitter) {
  const own = submitter?.getAttribute("formaction") ?? form.getAttribute("action") ?? "";
  const url = new URL(own || location.href, location.href);
  return url.pathname + url.search;
}

export const hiddenInput = (form, name) => form.querySelector(`input[name="${name}"]`);
