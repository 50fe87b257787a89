// Entries: read when the field is left, posted as one change, set back as the server sets them.
import { takeIn } from "./revisions.js";
import { ask, drawing, shown } from "./shared.js";
import { inTurn } from "./turns.js";
import { markAgain } from "./workings.js";

/** How many changes wait for the one before them: what follows after a change is asked for once, after the last. */
let waiting = 0;
/** Counts the changes: what follows after one is dropped when the next has begun. */
let turn = 0;

/** Post one change of the job and put what came of it in place.
 * @param {Record<string, string>} change
 * @param {string} [where] */
export function postChange(change, where = "edit") {
  waiting += 1;
  turn += 1;
  return inTurn(async () => {
    waiting -= 1;
    const { job, sheet } = shown();
    const { rev, token } = drawing();
    document.body.classList.add("typing");
    const asked = window.location.search;
    const field = document.activeElement;
    const clean = field instanceof HTMLInputElement && field.value === field.dataset.kept;
    const answered = await ask("POST", `/jobs/${job}/${where}`, { ...change, rev, token, sheet, asked });
    // The field with the cursor keeps what is typed in it; where nothing was typed it follows the job.
    if (clean && field.isConnected) field.value = field.dataset.kept ?? "";
    document.body.classList.remove("typing");
    if (answered && change.do === "set") setBack(change.path, change.value);
    // Refused because the job has moved on: take in what is new, so that the next change stands on it.
    if (!answered) await takeIn();
    markAgain();
    if (waiting) return;
    const mine = turn;
    void follow(() => mine === turn).then(markAgain);
  });
}

/** Set an entry back as the server sets it; where the cursor stands in it, it would stay as it was typed.
 * @param {string} path @param {string} typed */
function setBack(path, typed) {
  for (const each of document.querySelectorAll(`input[data-entry="${CSS.escape(path)}"]`)) {
    if (each instanceof HTMLInputElement && each.value === typed) each.value = each.dataset.kept ?? typed;
  }
}

/** What follows after the answer: findings, charts, and where each sheet stands.
 * @param {() => boolean} [wanted] whether it is still to be put in place when it comes */
export async function follow(wanted = () => true) {
  const { token, wait } = drawing();
  if (!wait) return;
  const { job, sheet } = shown();
  const asked = new URLSearchParams(window.location.search);
  asked.set("sheet", sheet);
  asked.set("token", token);
  await ask("GET", `/jobs/${job}/after`, asked, wanted);
}

/** Undo, redo, or go to a revision.
 * @param {string} how
 * @param {number} number */
export function moveRevision(how, number) {
  return postChange({ how, number: String(number) }, "move");
}

/** @type {WeakMap<Element, string>} what was posted last from a field */
const posted = new WeakMap();

/** @returns {boolean} whether something stands in the field with focus that was not posted yet */
function isHalfTyped() {
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement) || field.dataset.entry === undefined || field.type === "range") return false;
  return field.value !== field.dataset.kept && field.value !== posted.get(field);
}

/** Take in what is half typed, and wait until all that was changed is kept.
 * @returns {Promise<void>} */
export function whenKept() {
  const field = document.activeElement;
  if (isHalfTyped() && field instanceof HTMLElement) field.blur();
  return inTurn(async () => undefined);
}

/** Watch every entry of the page, also those that come later. */
export function watchEntries() {
  document.addEventListener("change", (event) => {
    const field = event.target;
    if (!(field instanceof HTMLInputElement || field instanceof HTMLSelectElement || field instanceof HTMLTextAreaElement)) return;
    const path = field.dataset.entry;
    if (path === undefined || field.value === field.dataset.kept) return;
    posted.set(field, field.value);
    postChange({ do: field.dataset.how ?? "set", path, value: field.value });
  });
  document.addEventListener("keydown", (event) => {
    const field = event.target;
    if (!(field instanceof HTMLInputElement) || field.dataset.entry === undefined) return;
    if (event.key === "Escape") field.value = field.dataset.kept ?? "";
    if (event.key === "Enter") {
      event.preventDefault();
      field.dispatchEvent(new Event("change", { bubbles: true }));
    }
  });
  window.addEventListener("beforeunload", (event) => {
    if (isHalfTyped()) event.preventDefault();
  });
}
