// Entries: read when the field is left, posted as one change, set back as the server sets them.
import { ask, drawing, shown } from "./shared.js";
import { markAgain } from "./workings.js";

/** @type {Promise<void>} one change after the other, so that none is laid on an old revision */
let queue = Promise.resolve();

/** Post one change of the job and put what came of it in place.
 * @param {Record<string, string>} change
 * @param {string} [where] */
export function postChange(change, where = "edit") {
  queue = queue.then(async () => {
    const { job, sheet } = shown();
    const { rev, token } = drawing();
    document.body.classList.add("typing");
    const asked = window.location.search;
    const answered = await ask("POST", `/jobs/${job}/${where}`, { ...change, rev, token, sheet, asked });
    if (answered && change.do === "set") setBack(change.path, change.value);
    document.body.classList.remove("typing");
    await follow();
    markAgain();
  });
  return queue;
}

/** Set an entry back as the server sets it; where the cursor stands in it, it would stay as it was typed.
 * @param {string} path @param {string} typed */
function setBack(path, typed) {
  for (const each of document.querySelectorAll(`input[data-entry="${CSS.escape(path)}"]`)) {
    if (each instanceof HTMLInputElement && each.value === typed) each.value = each.dataset.kept ?? typed;
  }
}

/** What follows after the answer: findings, and where each sheet stands. */
export async function follow() {
  const { token, wait } = drawing();
  if (!wait) return;
  const { job, sheet } = shown();
  const asked = new URLSearchParams(window.location.search);
  asked.set("sheet", sheet);
  asked.set("token", token);
  await ask("GET", `/jobs/${job}/after`, asked);
}

/** Undo, redo, or go to a revision.
 * @param {string} how
 * @param {number} number */
export function moveRevision(how, number) {
  return postChange({ how, number: String(number) }, "move");
}

/** Watch every entry of the page, also those that come later. */
export function watchEntries() {
  document.addEventListener("change", (event) => {
    const field = event.target;
    if (!(field instanceof HTMLInputElement || field instanceof HTMLSelectElement || field instanceof HTMLTextAreaElement)) return;
    const path = field.dataset.entry;
    if (path === undefined || field.value === field.dataset.kept) return;
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
}
