// How well an entry is known: one small menu at the end of the entry that has focus.
import { postChange } from "./entries.js";
import { shown } from "./shared.js";

const WORDS = ["measured", "from plans", "told", "assumed"];

/** @type {HTMLInputElement | null} the entry that the menu speaks of */
let entry = null;

const menu = document.createElement("div");
menu.className = "known";
menu.setAttribute("role", "group");
menu.hidden = true;
const choice = document.createElement("select");
choice.setAttribute("aria-label", "How well it is known");
for (const each of WORDS) choice.add(new Option(each, each));
const more = document.createElement("button");
more.type = "button";
more.className = "btn quiet";
more.textContent = "within, because";
const beside = document.createElement("div");
beside.id = "known-more";
menu.append(choice, more, beside);

/** @returns {HTMLInputElement | null} the entry as it stands on the page now, after it may have been drawn anew */
function current() {
  if (!entry || entry.isConnected) return entry;
  const found = document.querySelector(`input[data-known][data-entry="${CSS.escape(entry.dataset.entry ?? "")}"]`);
  return found instanceof HTMLInputElement ? found : null;
}

function place() {
  if (!entry || menu.hidden) return;
  const box = entry.getBoundingClientRect();
  const wide = menu.offsetWidth;
  const left = Math.max(4, Math.min(box.left + window.scrollX, window.scrollX + document.documentElement.clientWidth - wide - 4));
  menu.style.left = `${left}px`;
  menu.style.top = `${box.bottom + window.scrollY + 5}px`;
}

/** @param {HTMLInputElement} field */
function open(field) {
  entry = field;
  choice.value = field.dataset.known || "told";
  beside.replaceChildren();
  menu.setAttribute("aria-label", `${field.getAttribute("aria-label") ?? "Entry"}: how well it is known`);
  menu.hidden = false;
  place();
}

function close() {
  menu.hidden = true;
  beside.replaceChildren();
  entry = null;
}

/** Fetch what is said beside the value, and show its two entries. */
async function showMore() {
  const field = current();
  if (!field) return;
  const query = new URLSearchParams({ path: field.dataset.entry ?? "" });
  const answer = await fetch(`/jobs/${shown().job}/known?${query}`, { headers: { "HX-Request": "true" } });
  if (!answer.ok) return;
  const made = new DOMParser().parseFromString(await answer.text(), "text/html");
  beside.replaceChildren(...made.body.childNodes);
  const first = beside.querySelector("input");
  if (first instanceof HTMLElement) first.focus();
  place();
}

/** Watch which entry has focus. Alt and the down arrow lead from an entry to its menu, Esc leads back. */
export function watchKnown() {
  (document.querySelector("main") ?? document.body).append(menu);
  document.addEventListener("focusin", (event) => {
    const field = event.target;
    if (field instanceof Node && menu.contains(field)) return;
    if (field instanceof HTMLInputElement && field.dataset.known !== undefined && !field.classList.contains("words") && field.value !== "") open(field);
    else close();
  });
  document.addEventListener("keydown", (event) => {
    if (event.altKey && event.key === "ArrowDown" && !menu.hidden && event.target === entry) {
      event.preventDefault();
      choice.focus();
    } else if (event.key === "Escape" && event.target instanceof Node && menu.contains(event.target)) {
      event.preventDefault();
      current()?.focus();
    }
  });
  document.addEventListener("pointerdown", (event) => {
    const at = event.target;
    if (!menu.hidden && at instanceof Node && !menu.contains(at) && at !== entry) close();
  });
  choice.addEventListener("change", async () => {
    const field = current();
    if (!field) return;
    const path = field.dataset.entry ?? "";
    await postChange({ do: "known", path, value: choice.value });
    if (entry?.dataset.entry === path) entry = current();
  });
  more.addEventListener("click", showMore);
  window.addEventListener("resize", place);
}
