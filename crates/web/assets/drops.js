// Several water drops at once: each has its own clock, from the tap that set it to the tap that ended it.
import { askToStay, handOver, outbox, sendKept } from "./queue.js";
import { entryId, localTime } from "./stamp.js";
import { make, word } from "./words.js";

const SVG = "http://www.w3.org/2000/svg";
const ENDS = [
  ["script-drop-soaked", (seconds) => ["soaked_in", `${seconds} s`]],
  ["script-drop-stands", (seconds) => ["still_stood_after", `${seconds} s`]],
  ["script-drop-beads", () => ["beads", "yes"]],
];

const secondsOf = (drop) => Math.max(0, Math.round((Date.now() - drop.since) / 1000));
const clockOf = (all) => `${Math.floor(all / 60)}:${String(all % 60).padStart(2, "0")}`;

export function startDrops(box) {
  const { slab, writer } = document.body.dataset;
  const key = `underfoot-drops:${writer}:${slab}`;
  const list = box.querySelector("[data-drops-list]");
  const said = box.querySelector("[data-drops-said]");
  const svg = box.querySelector("[data-drops-plan] svg");
  // The clocks outlive the page: a phone in a pocket may load it again.
  let drops = JSON.parse(localStorage.getItem(key) ?? "[]");

  const save = () => localStorage.setItem(key, JSON.stringify(drops));
  const say = (text) => {
    said.textContent = text;
    said.hidden = false;
  };

  function mark({ n, at }) {
    if (!svg || !at) return;
    const size = svg.viewBox.baseVal.width / 45;
    const group = document.createElementNS(SVG, "g");
    group.setAttribute("class", "drop-mark");
    const ring = document.createElementNS(SVG, "circle");
    for (const [name, value] of [["cx", at.x], ["cy", at.y], ["r", size]]) ring.setAttribute(name, value);
    const number = document.createElementNS(SVG, "text");
    for (const [name, value] of [["x", at.x], ["y", at.y], ["font-size", size * 1.3]]) number.setAttribute(name, value);
    number.textContent = n;
    group.append(ring, number);
    svg.append(group);
  }

  async function end(drop, button, outcome) {
    const row = button.closest("li");
    for (const other of row.querySelectorAll("button")) other.disabled = true;
    const fields = [
      ["entry", drop.id],
      ["noted", localTime()],
      ["happened", localTime(new Date(drop.since))],
      ["place_asked", "yes"],
      ...drop.place,
      outcome,
    ];
    const record = {
      id: drop.id,
      writer,
      action: box.dataset.action,
      fields,
      files: [],
      slab: slab ?? "",
      label: `${box.dataset.label} ${drop.n}`,
      made: Date.now(),
      state: "waiting",
      mistakes: [],
    };
    try {
      await outbox.put(record);
    } catch {
      // Not kept, so not gone either: the row stays, and what the clock read is told.
      for (const other of row.querySelectorAll("button")) other.disabled = false;
      say(word("script-drop-not-kept", { number: drop.n, clock: clockOf(secondsOf(drop)) }));
      return;
    }
    drops = drops.filter((other) => other.id !== drop.id);
    save();
    draw();
    askToStay();
    const sent = await sendKept(record);
    if (sent.is === "sent") say(word("script-drop-written", { number: drop.n }));
    else if (sent.is === "refused") say(word("script-state-refused"));
    else {
      await handOver();
      say(word("script-kept-on-phone"));
    }
  }

  function row(drop) {
    const buttons = ENDS.map(([label, outcome]) => {
      const button = make("button", { type: "button", class: "plain", text: word(label) });
      button.addEventListener("click", () => end(drop, button, outcome(secondsOf(drop))));
      return button;
    });
    const away = make("button", { type: "button", class: "plain", text: word("script-drop-remove") });
    away.addEventListener("click", () => {
      drops = drops.filter((other) => other.id !== drop.id);
      save();
      draw();
    });
    const clock = make("output", { "aria-live": "off", text: clockOf(secondsOf(drop)) });
    clock.dataset.since = drop.since;
    const line = make("li", { value: drop.n }, make("b", { text: `${drop.n} · ${drop.said}` }), " ", clock);
    line.append(make("div", { class: "chips" }, ...buttons, away));
    return line;
  }

  function draw() {
    list.replaceChildren(...drops.map(row));
    for (const old of svg?.querySelectorAll(".drop-mark") ?? []) old.remove();
    drops.forEach(mark);
  }

  function set(place, text, at = null) {
    const n = Math.max(0, ...drops.map((drop) => drop.n)) + 1;
    drops = [...drops, { id: entryId(), n, place, said: text, at, since: Date.now() }];
    save();
    draw();
  }

  for (const button of box.querySelectorAll("[data-drop-zone]")) {
    const zone = button.dataset.dropZone;
    const place = zone ? [["place_kind", `zone:${zone}`]] : [["place_kind", "slab"]];
    button.addEventListener("click", () => set(place, zone || box.dataset.label));
  }
  box.addEventListener("placed", ({ detail }) => {
    const place = [["place_kind", "point"], ["x", detail.x], ["y", detail.y]];
    set(place, `${detail.x}, ${detail.y}`, detail.at);
  });
  setInterval(() => {
    for (const clock of list.querySelectorAll("output")) {
      clock.textContent = clockOf(secondsOf({ since: Number(clock.dataset.since) }));
    }
  }, 250);
  draw();
  box.hidden = false;
}
