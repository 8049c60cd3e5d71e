// Rows that can be added and removed: [data-rows] with a <template data-row>.

let count = 0;

const templateOf = (box) => box.querySelector("template[data-row]");

// A row is any element beside the template that carries a field.
function rowsOf(box) {
  const holder = templateOf(box)?.parentElement;
  if (!holder) return [];
  return [...holder.children].filter((child) => child.querySelector('[name$="[]"]'));
}

export function addRow(box) {
  const template = templateOf(box);
  const row = template.content.cloneNode(true);
  count += 1;
  // Labels need ids of their own in each row: the template writes __row__ where the number goes.
  for (const element of row.querySelectorAll("*")) {
    for (const name of ["id", "for", "aria-labelledby", "aria-describedby"]) {
      const value = element.getAttribute(name);
      if (value?.includes("__row__")) {
        element.setAttribute(name, value.replaceAll("__row__", `new-${count}`));
      }
    }
  }
  const first = row.querySelector("input, select, textarea");
  const last = rowsOf(box).at(-1);
  if (last) last.after(row);
  else template.before(row);
  return first;
}

export function ensureRows(form, name, wanted) {
  for (const box of form.querySelectorAll("[data-rows]")) {
    const has = templateOf(box)?.content.querySelector(`[name="${CSS.escape(name)}"]`);
    if (!has) continue;
    while (box.querySelectorAll(`[name="${CSS.escape(name)}"]`).length < wanted) addRow(box);
  }
}

function tellForm(box) {
  box.dispatchEvent(new Event("input", { bubbles: true }));
}

function removeRow(box, button) {
  const rows = rowsOf(box);
  const at = rows.findIndex((row) => row.contains(button));
  if (at < 0) return;
  rows[at].remove();
  const beside = rows[at + 1] ?? rows[at - 1];
  // The focus must not fall back to the top of the page with the removed button.
  const next = beside?.querySelector("input, select, textarea") ?? addButton(box);
  next?.focus();
  tellForm(box);
}

const addButton = (box) =>
  box.querySelector("[data-add-row]") ?? box.parentElement.querySelector("[data-add-row]");

export function startRows(box) {
  if (!templateOf(box)) return;
  const button = addButton(box);
  if (button) {
    button.hidden = false;
    button.addEventListener("click", () => {
      addRow(box)?.focus();
      tellForm(box);
    });
  }
  box.addEventListener("click", (event) => {
    const remove = event.target.closest("[data-remove-row]");
    if (remove) removeRow(box, remove);
  });
}
