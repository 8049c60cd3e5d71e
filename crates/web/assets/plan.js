// The plan: a tap marks a place and writes it into the form, or opens a menu for that place.
import { changedBySelf } from "./fields.js";
import { inUnits, startView } from "./view.js";
import { word } from "./words.js";

const SVG = "http://www.w3.org/2000/svg";
const FOOT = 0.3048;
const MARK_PIXELS = 14;

const textOf = (meters, imperial) =>
  imperial ? `${(meters / FOOT).toFixed(2)} ft` : `${meters.toFixed(2)} m`;

// Only what this script writes itself and what is commonly typed; anything else draws no mark.
function metersOf(text) {
  const found = text.trim().match(/^(-?\d+(?:[.,]\d+)?)\s*(m|ft|')$/);
  if (!found) return null;
  const number = Number(found[1].replace(",", "."));
  return found[2] === "m" ? number : number * FOOT;
}

// A cross in a ring, drawn at the same size on the screen at every zoom.
function newMark(svg) {
  const mark = document.createElementNS(SVG, "g");
  mark.setAttribute("class", "placed off");
  mark.setAttribute("aria-hidden", "true");
  const shape = document.createElementNS(SVG, "path");
  shape.setAttribute("d", "M-1 0H1M0-1V1M.6 0A.6 .6 0 1 1-.6 0A.6 .6 0 1 1 .6 0");
  shape.setAttribute("fill", "none");
  shape.setAttribute("vector-effect", "non-scaling-stroke");
  mark.append(shape);
  svg.append(mark);
  return mark;
}

// The nearest thing with a title of its own, below the drawing itself.
function titleOf(svg, target) {
  for (let at = target; at && at !== svg; at = at.parentElement) {
    const title = [...at.children].find((child) => child.tagName === "title");
    if (title) return title.textContent;
  }
  return null;
}

function startLayers(figure, svg) {
  for (const box of figure.querySelectorAll("input[data-layer]")) {
    const show = () => {
      for (const group of svg.querySelectorAll(`[data-layer-of="${CSS.escape(box.dataset.layer)}"]`)) {
        group.classList.toggle("off", !box.checked);
      }
    };
    box.addEventListener("change", show);
    show();
  }
}

function openMenu(figure, texts) {
  const menu = document.getElementById(figure.dataset.tapMenu);
  if (!menu) return;
  for (const link of menu.querySelectorAll("a[data-at]")) {
    const url = new URL(link.getAttribute("href"), location.href);
    url.searchParams.set("x", texts.x);
    url.searchParams.set("y", texts.y);
    link.setAttribute("href", url.pathname + url.search + url.hash);
  }
  menu.hidden = false;
  menu.tabIndex = -1;
  menu.focus();
}

export function choosePoint(form) {
  const point = form.querySelector('input[name="place_kind"][value="point"]');
  if (point) point.checked = true;
  const list = form.querySelector('select[name="place_kind"]');
  if (list) list.value = "point";
}

export function startPlan(figure) {
  const svg = figure.querySelector("svg");
  if (!svg || figure.dataset.ready) return;
  figure.dataset.ready = "yes";
  const form = figure.closest("form");
  const into = (name) => (form && name ? form.elements.namedItem(name) : null);
  const fieldX = into(figure.dataset.intoX);
  const fieldY = into(figure.dataset.intoY);
  const imperial = figure.dataset.measure === "imperial";
  const [x0, y0, m] = [svg.dataset.x0, svg.dataset.y0, svg.dataset.m].map(Number);
  const said = figure.querySelector("[data-plan-said]");
  const mark = newMark(svg);
  let at = null;

  function drawMark() {
    mark.classList.toggle("off", !at);
    if (!at) return;
    const units = MARK_PIXELS / (svg.getScreenCTM()?.a || 1);
    mark.setAttribute("transform", `translate(${at.x} ${at.y}) scale(${units})`);
  }

  function followFields() {
    const [x, y] = [metersOf(fieldX.value), metersOf(fieldY.value)];
    at = x === null || y === null ? null : { x: (x - x0) / m, y: (y0 - y) / m };
    drawMark();
  }

  function tapped({ x, y, target }) {
    const point = inUnits(svg, x, y);
    const texts = {
      x: textOf(x0 + m * point.x, imperial),
      y: textOf(y0 - m * point.y, imperial),
    };
    const places = (fieldX && fieldY) || figure.dataset.tapMenu;
    const told = [titleOf(svg, target)];
    if (places) told.push(word("script-plan-at", texts));
    if (said) said.textContent = told.filter(Boolean).join(". ");
    if (figure.dataset.dropsPlan !== undefined) {
      figure.dispatchEvent(new CustomEvent("placed", { bubbles: true, detail: { ...texts, at: point } }));
    } else if (fieldX && fieldY) {
      fieldX.value = texts.x;
      fieldY.value = texts.y;
      choosePoint(form);
      changedBySelf(form);
    } else if (figure.dataset.tapMenu) {
      at = point;
      drawMark();
      openMenu(figure, texts);
    }
  }

  const view = startView(svg, { onTap: tapped, onChange: drawMark });
  const acts = { in: view.closer, out: view.farther, all: view.all };
  // Served hidden, the buttons and what holds them: without script they would do nothing.
  for (const held of figure.querySelectorAll("[hidden]:has([data-zoom])")) held.hidden = false;
  for (const button of figure.querySelectorAll("[data-zoom]")) {
    button.hidden = false;
    button.addEventListener("click", () => acts[button.dataset.zoom]?.());
  }
  startLayers(figure, svg);
  if (fieldX && fieldY) {
    form.addEventListener("input", followFields);
    followFields();
  }
}
