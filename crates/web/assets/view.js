// Looking closer at a plan: pinch, drag, buttons and ctrl-wheel change the svg's viewBox.
const MOST_TIMES = 20;
const TAP_PIXELS = 10;

function viewBoxOf(svg) {
  const { x, y, width, height } = svg.viewBox.baseVal;
  return { x, y, width, height };
}

// Where a point of the screen lies in the svg's own units.
export function inUnits(svg, clientX, clientY) {
  return new DOMPoint(clientX, clientY).matrixTransform(svg.getScreenCTM().inverse());
}

export function startView(svg, { onTap, onChange }) {
  const whole = viewBoxOf(svg);
  // Kept here, because the attribute is read back with single precision and would drift.
  let now = whole;

  function set(view) {
    const width = Math.min(whole.width, Math.max(whole.width / MOST_TIMES, view.width));
    const height = (width / whole.width) * whole.height;
    // The plan cannot be pushed out of its frame.
    const x = Math.min(whole.x + whole.width - width, Math.max(whole.x, view.x));
    const y = Math.min(whole.y + whole.height - height, Math.max(whole.y, view.y));
    now = { x, y, width, height };
    svg.setAttribute("viewBox", `${x} ${y} ${width} ${height}`);
    onChange(width / whole.width);
  }

  // Bigger by `times`, with the point `at` staying where it is.
  function zoom(times, at) {
    const width = Math.min(whole.width, Math.max(whole.width / MOST_TIMES, now.width / times));
    const share = width / now.width;
    set({ x: at.x - (at.x - now.x) * share, y: at.y - (at.y - now.y) * share, width });
  }

  const middle = () => new DOMPoint(now.x + now.width / 2, now.y + now.height / 2);

  const fingers = new Map();
  let start = null;
  let moved = false;

  const spread = () => {
    const [a, b] = [...fingers.values()];
    return {
      x: (a.x + b.x) / 2,
      y: (a.y + b.y) / 2,
      apart: Math.max(1, Math.hypot(a.x - b.x, a.y - b.y)),
    };
  };

  function shift(from, to) {
    const a = inUnits(svg, from.x, from.y);
    const b = inUnits(svg, to.x, to.y);
    set({ ...now, x: now.x + a.x - b.x, y: now.y + a.y - b.y });
  }

  svg.addEventListener("pointerdown", (event) => {
    if (event.button > 0) return;
    svg.setPointerCapture(event.pointerId);
    if (!fingers.size) {
      start = { x: event.clientX, y: event.clientY, target: event.target };
      moved = false;
    } else moved = true;
    fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
  });

  svg.addEventListener("pointermove", (event) => {
    const before = fingers.get(event.pointerId);
    if (!before) return;
    const here = { x: event.clientX, y: event.clientY };
    if (fingers.size === 2) {
      const old = spread();
      fingers.set(event.pointerId, here);
      const fresh = spread();
      shift(old, fresh);
      zoom(fresh.apart / old.apart, inUnits(svg, fresh.x, fresh.y));
      return;
    }
    // A gloved finger is never quite still.
    if (!moved && Math.hypot(here.x - start.x, here.y - start.y) < TAP_PIXELS) return;
    moved = true;
    fingers.set(event.pointerId, here);
    if (fingers.size === 1) shift(before, here);
  });

  // A tap counts when its click is over: what a tap brings up may slide under the finger, and the
  // click must not press that. Where no click comes, a moment later; one that comes later still, as on
  // a slow phone, presses nothing.
  let pending = null;
  let overdue = null;

  function settle() {
    if (!pending) return;
    const tap = pending;
    pending = null;
    onTap(tap);
  }
  svg.addEventListener("click", settle);
  document.addEventListener("pointerdown", () => (overdue = null), { capture: true });
  document.addEventListener(
    "click",
    (event) => {
      if (event.pointerType === "mouse" || event.pointerId !== overdue) return;
      overdue = null;
      event.preventDefault();
      event.stopPropagation();
    },
    { capture: true },
  );

  function lift(event) {
    if (!fingers.delete(event.pointerId)) return;
    if (event.type === "pointerup" && !fingers.size && !moved) {
      const tap = { ...start };
      pending = tap;
      setTimeout(() => {
        if (pending !== tap) return;
        overdue = event.pointerId;
        settle();
      }, 400);
    }
  }
  svg.addEventListener("pointerup", lift);
  svg.addEventListener("pointercancel", lift);

  svg.addEventListener(
    "wheel",
    (event) => {
      // Without ctrl the wheel scrolls the page, as everywhere.
      if (!event.ctrlKey) return;
      event.preventDefault();
      zoom(Math.exp(-event.deltaY / 300), inUnits(svg, event.clientX, event.clientY));
    },
    { passive: false },
  );

  return {
    closer: () => zoom(1.5, middle()),
    farther: () => zoom(1 / 1.5, middle()),
    all: () => set(whole),
  };
}
