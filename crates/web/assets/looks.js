// Live looks: the server draws or sums what is typed so far, and the fragment is shown as it comes.
import { make, word } from "./words.js";

const PAUSE_MS = 400;

export function startLook(form, afterwards) {
  const into = form.querySelector("[data-look-into]") ?? document.querySelector("[data-look-into]");
  if (!into) return;
  let waiting = null;
  let asking = null;

  function cannot() {
    if (into.querySelector("[data-cannot-look]")) return;
    into.prepend(make("p", { "data-cannot-look": "", class: "cannot-look", text: word("script-cannot-look") }));
  }

  async function look() {
    asking?.abort();
    const mine = new AbortController();
    asking = mine;
    const fields = [...new FormData(form)].filter(([, value]) => typeof value === "string");
    try {
      const answer = await fetch(form.dataset.look, {
        method: "POST",
        body: new URLSearchParams(fields),
        headers: { Accept: "text/html" },
        credentials: "same-origin",
        signal: mine.signal,
      });
      const html = (answer.headers.get("content-type") ?? "").startsWith("text/html");
      // 422 is an answer too: it says what cannot be drawn yet. A redirect is the sign-in page.
      if (!html || answer.redirected || !(answer.ok || answer.status === 422)) throw new Error("no look");
      const text = await answer.text();
      if (mine !== asking) return;
      into.innerHTML = text;
      afterwards(into);
    } catch {
      // An older question that was given up says nothing about the newer one.
      if (mine === asking) cannot();
    }
  }

  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(look, PAUSE_MS);
  });
}
