// What a form must have answered before it is kept or sent, and the zone it begins with.
// Without a connection nobody else would ask: the server's "where?" would come hours later.
const HOURS = 12;

const { slab, writer, made } = document.body.dataset;
const zoneKey = `underfoot-zone:${writer}:${slab}`;
const chosen = (form) => form.querySelector('[name="place_kind"]:checked');

function answered(form, asked) {
  if (asked.tagName === "INPUT") return asked.value.trim() !== "";
  // About an incident that has its own place, or typed as a point.
  const typed = (name) => form.elements.namedItem(name)?.value.trim();
  return Boolean(chosen(form) || typed("x") || typed("y") || typed("of"));
}

export function leftOpen(form) {
  const open = [...form.querySelectorAll("[data-missing]")].filter((asked) => !answered(form, asked));
  return open.map((asked) => ({ field: asked.dataset.asks, message: asked.dataset.missing }));
}

export function rememberZone(form) {
  const zone = chosen(form)?.value;
  if (zone?.startsWith("zone:")) localStorage.setItem(zoneKey, JSON.stringify({ zone, at: Date.now() }));
}

const isRecent = (at) => Date.now() - at < HOURS * 3_600_000;

// A page kept on the phone was made before the last entry: the phone knows the zone better.
export function recallZone(form) {
  const place = form.querySelector("[data-missing][data-recalls]");
  const now = place && chosen(form);
  if (!place || (now && now.value !== place.dataset.guess)) return;
  const last = JSON.parse(localStorage.getItem(zoneKey) ?? "null");
  const zone = last && isRecent(last.at) ? last.zone : null;
  const choice = zone && form.querySelector(`[name="place_kind"][value="${CSS.escape(zone)}"]`);
  if (choice) choice.checked = true;
  else if (now && !isRecent(Date.parse(made))) now.checked = false;
}
