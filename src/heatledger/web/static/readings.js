// Startup on a phone: the next reading in a bar at the bottom, and groups that are done fold to one line.
import { postChange } from "./entries.js";
import { say } from "./shared.js";

const PHONE = window.matchMedia("(max-width: 600px)");
/** @type {Set<string>} readings that were put off */
const later = new Set();
/** @type {Map<string, boolean>} groups that the reader opened or closed, by their name */
const chosen = new Map();
let folding = false;

/** Watch the bar and the groups of Startup. */
export function watchReadings() {
  if (document.body.dataset.sheet !== "startup") return;
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || form.dataset.bar === undefined) return;
    event.preventDefault();
    void keep(form);
  });
  document.addEventListener("click", (event) => {
    const at = event.target instanceof Element ? event.target : null;
    const form = at?.closest("[data-not-now]")?.closest("form");
    const link = at?.closest("a[data-line]");
    if (form instanceof HTMLFormElement) putOff(form);
    else if (link instanceof HTMLAnchorElement) goTo(event, link.dataset.line ?? "");
  });
  document.addEventListener("toggle", (event) => {
    const part = event.target;
    if (part instanceof HTMLDetailsElement && part.dataset.stage && !folding) chosen.set(part.dataset.stage, part.open);
  }, true);
  PHONE.addEventListener("change", refresh);
  const left = document.getElementById("left-parts");
  if (left) new MutationObserver(refresh).observe(left, { childList: true, subtree: true });
  refresh();
}

/** @param {HTMLFormElement} form */
async function keep(form) {
  const field = form.elements.namedItem("value");
  if (!(field instanceof HTMLInputElement || field instanceof HTMLSelectElement)) return;
  if (!field.value.trim()) {
    field.focus();
    return;
  }
  const path = form.dataset.bar ?? "";
  await postChange({ do: "set", path, value: field.value });
  refresh();
  const next = shownForm();
  focusIn(next);
}

/** @param {HTMLFormElement} form */
function putOff(form) {
  later.add(form.dataset.bar ?? "");
  const forms = [...document.querySelectorAll("form[data-bar]")];
  if (forms.every((each) => later.has(each.getAttribute("data-bar") ?? ""))) later.clear();
  refresh();
  focusIn(shownForm());
}

/** @returns {HTMLFormElement | null} the form of the bar that is shown */
function shownForm() {
  return document.querySelector("form[data-bar]:not([hidden])");
}

/** @param {HTMLFormElement | null} form */
function focusIn(form) {
  const field = form?.querySelector("[name=value]");
  if (field instanceof HTMLElement) field.focus();
  const words = form?.querySelector("p")?.textContent;
  if (words) say(words.trim());
}

/** Show the first reading that was not put off, mark its row, and fold what is done on a phone. */
function refresh() {
  const forms = [...document.querySelectorAll("form[data-bar]")];
  const first = forms.find((each) => !later.has(each.getAttribute("data-bar") ?? ""));
  for (const each of forms) {
    if (each instanceof HTMLElement && each.hidden !== (each !== first)) each.hidden = each !== first;
  }
  const row = first?.getAttribute("data-row") ?? "";
  for (const each of document.querySelectorAll("tr.next")) if (each.id !== row) each.classList.remove("next");
  document.getElementById(row)?.classList.add("next");
  fold();
}

/** Close the groups that are done on a phone; what the reader chose stays. */
function fold() {
  folding = true;
  for (const each of document.querySelectorAll("details.stage")) {
    if (!(each instanceof HTMLDetailsElement)) continue;
    const own = chosen.get(each.dataset.stage ?? "");
    const open = own ?? !(PHONE.matches && each.dataset.done === "yes");
    if (each.open !== open) each.open = open;
  }
  // Its event comes after this, as a task of its own.
  window.setTimeout(() => { folding = false; }, 0);
}

/** Go to a line, its group opened, and to its entry.
 * @param {Event} event @param {string} id */
function goTo(event, id) {
  const row = document.getElementById(id);
  if (!row) return;
  event.preventDefault();
  const part = row.closest("details");
  if (part) part.open = true;
  row.scrollIntoView({ block: "center", behavior: "instant" });
  const field = row.querySelector("input, select");
  if (field instanceof HTMLElement) field.focus({ preventScroll: true });
}
