// Marking the gray card or the panel on the first photograph by two taps; numbers in percent of the picture.
import { changedBySelf } from "./fields.js";
import { photographInputs, pictureUrl } from "./photos.js";
import { make, word } from "./words.js";

const SVG = "http://www.w3.org/2000/svg";
const SIDES = ["x", "y", "w", "h"];
const TAP = { card: () => word("script-card-tap"), panel: () => word("script-panel-tap") };
const MARKED = { card: (at) => word("script-card-marked", at), panel: (at) => word("script-panel-marked", at) };

const oneDecimal = (number) => (Math.round(number * 10) / 10).toFixed(1);

// The rectangle between two opposite corners, in percent, rounded so that it never passes 100.
export function between([ax, ay], [bx, by]) {
  const round = (number) => Math.round(number * 10) / 10;
  const [left, top] = [round(Math.min(ax, bx)), round(Math.min(ay, by))];
  const [right, bottom] = [round(Math.max(ax, bx)), round(Math.max(ay, by))];
  return [left, top, right - left, bottom - top].map(oneDecimal);
}

function drawing() {
  const svg = document.createElementNS(SVG, "svg");
  // Percent both ways: stretched over the picture, whatever its shape.
  svg.setAttribute("viewBox", "0 0 100 100");
  svg.setAttribute("preserveAspectRatio", "none");
  svg.setAttribute("class", "card-drawing");
  svg.setAttribute("aria-hidden", "true");
  const shape = document.createElementNS(SVG, "rect");
  shape.setAttribute("class", "card-box");
  shape.setAttribute("fill", "none");
  shape.setAttribute("vector-effect", "non-scaling-stroke");
  svg.append(shape);
  return { svg, shape };
}

export function startCard(box) {
  const form = box.closest("form");
  const input = form && photographInputs(form)[0];
  // What is marked: card, panel.
  const thing = box.dataset.cardMark;
  const fields = SIDES.map((side) => form?.elements.namedItem(`${thing}_${side}`));
  if (!input || fields.some((field) => !field)) return;
  const picture = make("img", { alt: word("script-mark-photograph") });
  const { svg, shape } = drawing();
  const frame = make("div", { class: "card-picture" }, picture, svg);
  const told = make("p", { role: "status" });
  const again = make("button", { type: "button", text: word("script-mark-again") });
  const part = make("div", { class: "card-marking" }, told, frame, again);
  part.hidden = true;
  box.prepend(part);
  let first = null;
  let file = null;

  const numbers = () => fields.map((field) => Number.parseFloat(field.value));

  function place(x, y, w, h) {
    const sizes = { x, y, width: w, height: h };
    for (const [name, value] of Object.entries(sizes)) shape.setAttribute(name, value);
    shape.toggleAttribute("hidden", false);
    shape.style.display = "";
  }

  // Follows the fields, so that the keyboard way and the taps show the same rectangle.
  function show() {
    if (first) return;
    const [x, y, w, h] = numbers();
    const marked = [x, y, w, h].every(Number.isFinite);
    again.hidden = !marked;
    if (marked) {
      place(x, y, w, h);
      told.textContent = MARKED[thing]( {
        x: oneDecimal(x),
        y: oneDecimal(y),
        w: oneDecimal(w),
        h: oneDecimal(h),
      });
    } else {
      shape.style.display = "none";
      told.textContent = TAP[thing]();
    }
  }

  function clear() {
    first = null;
    for (const field of fields) field.value = "";
    changedBySelf(form);
  }

  frame.addEventListener("click", (event) => {
    const area = picture.getBoundingClientRect();
    const percent = (at, from, size) => Math.min(100, Math.max(0, ((at - from) / size) * 100));
    const tap = [
      percent(event.clientX, area.left, area.width),
      percent(event.clientY, area.top, area.height),
    ];
    if (!first) {
      first = tap;
      place(tap[0] - 0.5, tap[1] - 0.5, 1, 1);
      told.textContent = word("script-mark-second");
      again.hidden = false;
      return;
    }
    const values = between(first, tap);
    first = null;
    // Two taps on one spot are a slip, not a box.
    if (Number(values[2]) < 0.5 || Number(values[3]) < 0.5) {
      clear();
      return;
    }
    fields.forEach((field, index) => {
      field.value = values[index];
    });
    changedBySelf(form);
  });
  again.addEventListener("click", clear);
  form.addEventListener("input", show);

  function follow(restored) {
    // The marks are those of the first photograph: in a correction the one that is kept.
    const kept = form.dataset.kept;
    const now = kept ? null : (input.files[0] ?? null);
    // The marks of one photograph say nothing about another.
    if (file && now !== file && !restored) clear();
    file = now;
    part.hidden = !now && !kept;
    if (kept) picture.src = kept;
    else if (now) picture.src = pictureUrl(now);
    else picture.removeAttribute("src");
    show();
  }
  form.addEventListener("photographs", (event) => follow(event.detail.restored));
  follow(true);
}
