// Small helps: copying, printing, and a sentence that is to be shown on the next page.
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

export function startPrint(button) {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
}
