// What a form must have answered before it is kept or sent, and the zone it begins with.
// Without a connection nobody else would ask: the server's "where?" would come hours later.
const HOURS = 12;

const zoneKey = () => `underfoot-zone:${document.body.dataset.slab ?? ""}`;
const chosen = (form) => form.querySelector('[name="place_kind"]:checked');

function answered(form, asked) {
  if (asked.tagName === "INPUT") return asked.value.trim() !== "";
  // About an incident that has its own place, or typed as a point.
  return Boolean(chosen(form) || form.elements.namedItem("x")?.value.trim() || form.querySelector('[name="of"]:checked')?.value || form.querySelector('select[name="of"]')?.value);
}

export function leftOpen(form) {
  const open = [...form.querySelectorAll("[data-missing]")].filter((asked) => !answered(form, asked));
  return open.map((asked) => ({ field: asked.dataset.asks, message: asked.dataset.missing }));
}

export function rememberZone(form) {
  const zone = chosen(form)?.value;
  if (zone?.startsWith("zone:")) localStorage.setItem(zoneKey(), JSON.stringify({ zone, at: Date.now() }));
}

// A page kept on the phone was made before the last entry: the phone knows the zone better.
export function recallZone(form) {
  const place = form.querySelector("[data-missing][data-recalls]");
  if (!place || chosen(form)) return;
  const last = JSON.parse(localStorage.getItem(zoneKey()) ?? "null");
  if (!last || Date.now() - last.at > HOURS * 3_600_000) return;
  const choice = form.querySelector(`[name="place_kind"][value="${CSS.escape(last.zone)}"]`);
  if (choice) choice.checked = true;
}
