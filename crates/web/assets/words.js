// The texts the script shows come from the page, in the reader's language: <template id="words">.

const texts = new Map();
for (const span of document.getElementById("words")?.content.querySelectorAll("[data-word]") ?? []) {
  texts.set(span.dataset.word, span.textContent.trim());
}

// A missing word shows its key: seen at once, and better than an empty button.
export function word(key, holes = {}) {
  const text = texts.get(key) ?? key;
  return text.replace(/\{\s*\$?(\w+)\s*\}/g, (hole, name) => String(holes[name] ?? hole));
}

export function moment(milliseconds) {
  const format = new Intl.DateTimeFormat(document.documentElement.lang || undefined, {
    dateStyle: "medium",
    timeStyle: "short",
  });
  return format.format(new Date(milliseconds));
}

// The clock alone while it is still the same day; a page may have been kept for longer.
export function clock(milliseconds) {
  const then = new Date(milliseconds);
  if (then.toDateString() !== new Date().toDateString()) return moment(milliseconds);
  const lang = document.documentElement.lang || undefined;
  return new Intl.DateTimeFormat(lang, { timeStyle: "short" }).format(then);
}

// A small element with text; never through innerHTML, so that a label cannot become markup.
export function make(tag, { text, ...attributes } = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  if (text !== undefined) element.textContent = text;
  element.append(...children);
  return element;
}
