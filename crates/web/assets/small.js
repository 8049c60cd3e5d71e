// Small helps: copying, folds that open, and a sentence that is to be shown on the next page.
import { make, word } from "./words.js";

const SAID = "underfoot-said";

export function sayLater(text) {
  sessionStorage.setItem(SAID, text);
}

// The page's own word comes first: the server may have said it already.
export function saySaid() {
  const text = sessionStorage.getItem(SAID);
  sessionStorage.removeItem(SAID);
  const line = document.querySelector("[data-said]");
  if (!text || !line || line.textContent.trim() || document.querySelector("[data-said-here]")) return;
  line.hidden = false;
  line.textContent = text;
}

// A link to what lies in a fold opens it, in browsers that do not do so by themselves; print shows all.
export function openFolds() {
  const reveal = () => {
    const at = location.hash.length > 1 ? document.getElementById(decodeURIComponent(location.hash.slice(1))) : null;
    const fold = at?.closest("details:not([open])");
    if (!fold) return;
    fold.open = true;
    at.scrollIntoView();
  };
  addEventListener("hashchange", reveal);
  reveal();
  let opened = [];
  addEventListener("beforeprint", () => {
    opened = [...document.querySelectorAll("main details:not([open])")];
    for (const fold of opened) fold.open = true;
  });
  addEventListener("afterprint", () => {
    for (const fold of opened) fold.open = false;
    opened = [];
  });
}

export function startCopy(button) {
  // Not on plain http; there the text is on the page to be copied by hand.
  if (!navigator.clipboard) return;
  const status = make("span", { role: "status" });
  button.after(status);
  button.hidden = false;
  button.addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(button.dataset.copy);
      status.textContent = word("script-copied");
    } catch {
      status.textContent = word("script-cannot-copy");
    }
  });
}

// Whether entries can wait on this phone and pages can be kept. A browser that calls the line safe
// knows best: on this very machine there is no line.
export function canKeep() {
  return isSecureContext && "serviceWorker" in navigator && "indexedDB" in self;
}
