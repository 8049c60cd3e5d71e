// The box that shows what waits on this phone: [data-outbox] in the layout.
import { writerHere } from "./person.js";
import { outbox, sendNow } from "./queue.js";
import { make, moment, word } from "./words.js";

const stateWords = {
  waiting: "script-state-waiting",
  refused: "script-state-refused",
  "needs-sign-in": "script-state-needs-sign-in",
};

function mendAddress(record) {
  const url = new URL(record.action, location.href);
  url.searchParams.set("mend", record.id);
  return url.pathname + url.search;
}

function throwAway(record) {
  const button = make("button", { type: "button", text: word("script-throw-away") });
  button.addEventListener("click", () => {
    if (confirm(word("script-throw-away-sure", { label: record.label }))) outbox.remove(record.id);
  });
  return button;
}

function item(record) {
  const line = make("li", { "data-state": record.state });
  line.append(make("strong", { text: record.label }), " ", make("span", { text: moment(record.made) }));
  if (record.files.length) {
    line.append(" ", make("span", { text: word("script-photographs", { count: record.files.length }) }));
  }
  line.append(" ", make("span", { class: "state", text: word(stateWords[record.state]) }));
  if (record.state === "needs-sign-in") {
    line.append(" ", make("a", { href: "/sign-in", text: word("script-sign-in") }));
  }
  if (record.state === "refused") {
    const reasons = record.mistakes.map(({ message }) =>
      make("li", { text: message || word("script-refused-general") }),
    );
    line.append(
      make("ul", {}, ...reasons),
      make("a", { href: mendAddress(record), class: "button", text: word("script-mend") }),
      " ",
      throwAway(record),
    );
  }
  return line;
}

function sendButton(status) {
  const button = make("button", { type: "button", text: word("script-send-now") });
  button.addEventListener("click", async () => {
    button.disabled = true;
    status.textContent = word("script-sending");
    await sendNow().catch(() => {});
    button.disabled = false;
    if ((await outbox.of(await writerHere())).length) status.textContent = word("script-still-waits");
    button.focus();
  });
  return button;
}

export function startBox(section) {
  // The status line stays in place while the rest changes, or a screen reader would miss it.
  const status = make("p", { role: "status" });
  // One line, so that it takes nothing from the page; the list is a tap away.
  const head = make("span", { class: "count" });
  const list = make("ul");
  const fold = make("details", {}, make("summary", {}, head), list);
  const button = sendButton(status);
  section.replaceChildren(make("div", { class: "waits" }, fold, button), status);
  let shown = "";
  let before = 0;
  // An entry also leaves the box when it was thrown away, or refused and is shown in its form again.
  let sent = false;

  // Where nobody is signed in: how many wait, and nothing of what or whose.
  async function tellOthers() {
    const count = (await outbox.all()).length;
    list.replaceChildren();
    head.textContent = count ? word("script-waits-for-others", { count }) : "";
    button.hidden = true;
    section.hidden = !count;
  }

  async function refresh() {
    const writer = await writerHere();
    if (!writer) return tellOthers();
    const records = await outbox.of(writer);
    // Redrawn only when something changed, so that the focus is not taken from its buttons.
    const now = JSON.stringify(records.map(({ id, state, mistakes }) => [id, state, mistakes]));
    if (now === shown) return;
    shown = now;
    head.textContent = records.length ? word("script-not-sent-yet", { count: records.length }) : "";
    list.replaceChildren(...records.map(item));
    button.hidden = !records.some((record) => record.state !== "refused");
    fold.hidden = !records.length;
    // What a person has to see to is not left for them to find.
    if (records.some((record) => record.state !== "waiting")) fold.open = true;
    if (records.length) {
      section.hidden = false;
      if (records.length > before) status.textContent = "";
    } else if (before) {
      status.textContent = sent ? word("script-all-sent") : "";
      section.hidden = !sent;
    }
    before = records.length;
  }

  const quietly = () => refresh().catch(() => {});
  outbox.onChange((how) => {
    sent = how === "sent";
    quietly();
  });
  quietly();
}
