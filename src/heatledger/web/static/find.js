// Find a line: one key, one field, and what is found below it. With scripts off it is a page of its own.
import { shown } from "./shared.js";

const KEPT = "find-key";

/** @returns {boolean} whether the key / opens the field on this device */
function keyIsOn() {
  return window.localStorage.getItem(KEPT) !== "off";
}

/** @type {HTMLDialogElement | null} */
let dialog = null;

/** An element with its properties and what stands in it.
 * @param {string} tag @param {Record<string, unknown>} properties @param {(Node | string)[]} inner
 * @returns {HTMLElement} */
function element(tag, properties, ...inner) {
  const made = Object.assign(document.createElement(tag), properties);
  made.append(...inner);
  return made;
}

/** @returns {HTMLElement} the box that turns the key off and on */
function key() {
  const box = element("input", { type: "checkbox" });
  box.dataset.findKey = "";
  return element("label", {}, box, " the key / opens this");
}

/** @returns {HTMLElement} the button that closes */
function closing() {
  const button = element("button", { type: "button", className: "btn small" }, "Close");
  button.dataset.close = "";
  return button;
}

/** The field with what is found, made when it is asked for first. It needs its styles before it is shown. */
function made() {
  if (dialog) return dialog;
  const style = document.createElement("link");
  style.rel = "stylesheet";
  style.href = `/static/find.css${new URL(import.meta.url).search}`;
  document.head.append(style);
  dialog = document.createElement("dialog");
  dialog.className = "find";
  dialog.setAttribute("aria-label", "Find a line");
  dialog.append(
    element("form", { className: "find-form" },
      element("label", { htmlFor: "find-field" }, "Address, room or words"),
      element("input", { id: "find-field", className: "in", type: "search", autocomplete: "off", spellcheck: false, maxLength: 80 })),
    element("div", { id: "found", ariaLive: "polite" }),
    element("p", { className: "ends" }, key(), element("a", { href: "/help" }, "Keys and marks"), closing()),
  );
  document.body.append(dialog);
  dialog.addEventListener("input", (event) => {
    if (event.target instanceof HTMLInputElement && event.target.type === "search") lookSoon();
  });
  dialog.addEventListener("submit", (event) => {
    event.preventDefault();
    hits()[0]?.click();
  });
  dialog.addEventListener("keydown", step);
  dialog.addEventListener("click", (event) => {
    const target = event.target instanceof Element ? event.target : null;
    const again = target?.closest("[data-again]");
    if (again instanceof HTMLElement) {
      event.preventDefault();
      field().value = again.dataset.again ?? "";
      look();
    } else if (target === dialog || target?.closest("[data-close]")) dialog?.close();
    else if (target?.closest("[data-hit]")) dialog?.close();
  });
  showKey();
  return dialog;
}

/** @returns {HTMLInputElement} the field */
function field() {
  return /** @type {HTMLInputElement} */ (made().querySelector("#find-field"));
}

/** @returns {HTMLElement[]} what was found, as links in their order */
function hits() {
  return [...(dialog?.querySelectorAll("[data-hit]") ?? [])].filter((each) => each instanceof HTMLElement);
}

let timer = 0;
function lookSoon() {
  window.clearTimeout(timer);
  timer = window.setTimeout(look, 120);
}

let count = 0;
/** Ask for what the field says; only the last answer is put in its place. */
async function look() {
  const mine = ++count;
  const asked = new URLSearchParams({ q: field().value });
  const answer = await fetch(`/jobs/${shown().job}/find?${asked}`, { headers: { "HX-Request": "true" } });
  const text = await answer.text();
  const place = dialog?.querySelector("#found");
  if (mine !== count || !place) return;
  place.replaceChildren(...new DOMParser().parseFromString(text, "text/html").body.childNodes);
}

/** Arrows go from the field through what was found and back.
 * @param {KeyboardEvent} event */
function step(event) {
  if (event.key !== "ArrowDown" && event.key !== "ArrowUp") return;
  event.preventDefault();
  const all = [field(), ...hits()];
  const here = all.indexOf(/** @type {HTMLElement} */ (document.activeElement));
  const next = event.key === "ArrowDown" ? here + 1 : here - 1;
  all[Math.min(Math.max(next, 0), all.length - 1)].focus();
}

function open() {
  const box = made();
  if (!box.open) box.showModal();
  field().select();
  look();
}

function showKey() {
  for (const each of document.querySelectorAll("input[data-find-key]")) {
    if (each instanceof HTMLInputElement) each.checked = keyIsOn();
  }
}

/** Watch for the link, and for the key where it is on. */
export function watchFind() {
  showKey();
  document.addEventListener("change", (event) => {
    const box = event.target;
    if (!(box instanceof HTMLInputElement) || box.dataset.findKey === undefined) return;
    window.localStorage.setItem(KEPT, box.checked ? "on" : "off");
    showKey();
  });
  // Before the other keys: the one that opens the field is held back where it is off.
  window.addEventListener("keydown", (event) => {
    if (event.key === "/" && !keyIsOn()) event.stopPropagation();
  }, true);
  document.addEventListener("click", (event) => {
    const link = event.target instanceof Element ? event.target.closest("[data-find]") : null;
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey || !shown().job) return;
    event.preventDefault();
    open();
  });
}
