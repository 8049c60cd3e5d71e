// Measured on the page as it stands: what is too small to tap, what sticks out sideways, what is too
// faint to read outdoors. Gives { small, wide, faint, texts, targets }; each fault is one line of text.
((width) => {
  const seen = (one) => {
    if (!one.checkVisibility() || !one.getClientRects().length) return false;
    const { visibility, opacity } = getComputedStyle(one);
    return visibility === "visible" && (Number(opacity) > 0 || one.matches("input"));
  };
  const name = (one) => {
    const parts = [];
    for (let at = one; at && at !== document.body && parts.length < 4; at = at.parentElement) {
      const kind = typeof at.className === "string" && at.className ? `.${at.className.trim().split(/\s+/).join(".")}` : "";
      parts.unshift(at.localName + (at.id ? `#${at.id}` : kind));
    }
    return `${parts.join(" > ")} "${(one.innerText ?? one.textContent ?? "").trim().slice(0, 40)}"`;
  };

  // A link inside running text is as tall as its line; WCAG 2.5.8 exempts it too.
  const inText = (link) => {
    if (!link.matches("a") || getComputedStyle(link).display !== "inline") return false;
    return [...link.parentElement.childNodes].some(
      (node) => node !== link && node.nodeType === Node.TEXT_NODE && node.textContent.trim().length > 1,
    );
  };
  // What waits off the screen until it has the focus.
  const away = ({ left, right }) => right < 0 || left < -500;
  const targets = [...document.querySelectorAll("a[href], button, summary, input:not([type=hidden]), select, textarea, label.chip")];
  const small = [];
  let count = 0;
  for (const target of targets) {
    if (!seen(target) || inText(target) || target.closest("svg")) continue;
    // The words beside a box or a circle are tapped too.
    const box = target.matches("input[type=checkbox], input[type=radio]") ? (target.closest("label") ?? target) : target;
    const area = box.getBoundingClientRect();
    if (away(area)) continue;
    count += 1;
    if (area.width < 47.5 || area.height < 47.5) small.push(`${area.width.toFixed(0)} x ${area.height.toFixed(0)} ${name(target)}`);
  }

  const wide = [];
  if (document.documentElement.scrollWidth > width) {
    const held = (one) => {
      for (let at = one.parentElement; at; at = at.parentElement) {
        if (["auto", "scroll", "hidden"].includes(getComputedStyle(at).overflowX) && at !== document.documentElement && at !== document.body) return true;
      }
      return false;
    };
    const sticksOut = (one) => {
      const { right, left } = one.getBoundingClientRect();
      return right > width && left > -500 && seen(one) && !held(one);
    };
    const out = [...document.querySelectorAll("body *:not(svg *)")].filter(sticksOut);
    // The innermost say what it is; the rest only holds them.
    const inner = out.filter((one) => ![...one.children].some((child) => out.includes(child)));
    for (const one of inner.slice(0, 4)) {
      wide.push(`reaches ${one.getBoundingClientRect().right.toFixed(0)} of ${width}: ${name(one)}`);
    }
    if (!wide.length) wide.push(`the page is ${document.documentElement.scrollWidth} wide, more than ${width}`);
  }

  // WCAG 2.2, relative luminance and contrast ratio.
  const channels = (text) => {
    const numbers = text.match(/[\d.]+/g)?.map(Number) ?? [0, 0, 0, 0];
    return text.startsWith("rgb") ? [numbers[0], numbers[1], numbers[2], numbers[3] ?? 1] : null;
  };
  const over = ([r, g, b, a], [R, G, B]) => [r * a + R * (1 - a), g * a + G * (1 - a), b * a + B * (1 - a), 1];
  const luminance = ([r, g, b]) => {
    const [R, G, B] = [r, g, b].map((value) => {
      const share = value / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * R + 0.7152 * G + 0.0722 * B;
  };
  const ratio = (a, b) => {
    const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x);
    return (high + 0.05) / (low + 0.05);
  };
  const groundUnder = (one) => {
    const layers = [];
    for (let at = one; at; at = at.parentElement) {
      const color = channels(getComputedStyle(at).backgroundColor);
      if (!color || color[3] === 0) continue;
      layers.push(color);
      if (color[3] === 1) break;
    }
    return layers.reverse().reduce((ground, layer) => over(layer, ground), [255, 255, 255, 1]);
  };
  // In a drawing a text stands on the figure's paper, or on the last filled shape drawn before it.
  const shapeUnder = (text) => {
    const { left, top, width: wide, height } = text.getBoundingClientRect();
    let color = null;
    for (const shape of text.ownerSVGElement.querySelectorAll("rect, circle, ellipse, path, polygon")) {
      if (text.compareDocumentPosition(shape) & Node.DOCUMENT_POSITION_FOLLOWING) break;
      const style = getComputedStyle(shape);
      const fill = channels(style.fill);
      if (!fill || fill[3] * Number(style.fillOpacity) < 1 || shape.closest("defs, clipPath, pattern, mask") || !seen(shape)) continue;
      const middle = new DOMPoint(left + wide / 2, top + height / 2).matrixTransform(shape.getScreenCTM().inverse());
      if (shape.isPointInFill(middle)) color = fill;
    }
    return color;
  };
  const faint = [];
  let texts = 0;
  let worst = 21;
  const measure = (one, color, what) => {
    const ground = (one.ownerSVGElement && shapeUnder(one)) || groundUnder(one);
    const text = channels(color);
    if (!text) return;
    texts += 1;
    const found = ratio(over(text, ground), ground);
    worst = Math.min(worst, found);
    if (found < 7) faint.push(`${found.toFixed(2)}:1 ${what}${name(one)}`);
  };
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const done = new Set();
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const one = node.parentElement;
    if (!node.textContent.trim() || done.has(one) || one.matches("script, style, option, title, desc")) continue;
    if (one.closest("[disabled]") || !seen(one) || away(one.getBoundingClientRect())) continue;
    done.add(one);
    const style = getComputedStyle(one);
    const drawn = one.closest("svg");
    measure(one, drawn ? style.fill : style.color, "");
  }
  for (const field of document.querySelectorAll("input, textarea, select")) {
    if (!seen(field) || field.matches("[type=hidden], [type=checkbox], [type=radio], [disabled]")) continue;
    measure(field, getComputedStyle(field).color, "typed in ");
    if (field.placeholder) measure(field, getComputedStyle(field, "::placeholder").color, "example in ");
  }
  return { small, wide, faint, texts, targets: count, worst };
})
