// Waiting for work the server does in the background, such as a prediction or a hand-over book.
import { word } from "./words.js";

const EVERY_MS = 1_000;
const SLOWEST_MS = 10_000;

export function startWork(box) {
  const bar = box.querySelector("progress");
  const text = box.querySelector("[data-work-said]");
  let pause = EVERY_MS;

  async function ask() {
    try {
      const answer = await fetch(box.dataset.work, {
        headers: { Accept: "application/json" },
        credentials: "same-origin",
      });
      if (!answer.ok) throw new Error("no answer");
      const { done, share, said } = await answer.json();
      if (done) {
        location.reload();
        return;
      }
      if (bar) bar.value = share * (bar.max || 1);
      // Told only when it changes, or a screen reader would repeat it every second.
      if (text && said && text.textContent !== said) text.textContent = said;
      pause = EVERY_MS;
    } catch {
      if (text) text.textContent = word("script-cannot-ask");
      pause = Math.min(SLOWEST_MS, pause * 2);
    }
    setTimeout(ask, pause);
  }
  setTimeout(ask, EVERY_MS);
}
