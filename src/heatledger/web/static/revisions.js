// Two people on one job: a page that was left alone takes in what was changed elsewhere when it is looked at again.
import { ask, drawing, say, shown } from "./shared.js";
import { inTurn } from "./turns.js";

let busy = false;

/** Look for a newer revision when the page is seen or touched again. */
export function watchRevisions() {
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") void look();
  });
  window.addEventListener("focus", () => void look());
}

/** @returns {boolean} whether something is typed that was not kept yet */
function isTyping() {
  const field = document.activeElement;
  if (!(field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement || field instanceof HTMLSelectElement)) return false;
  return field.dataset.kept !== undefined && field.value !== field.dataset.kept;
}

/** Look when the changes that were begun here are done: they make revisions too. */
async function look() {
  if (!shown().job || busy) return;
  busy = true;
  try {
    await inTurn(takeIn);
  } finally {
    busy = false;
  }
}

/** Ask which revision stands, and take in what differs from this page; for who has the turn. */
export async function takeIn() {
  const { job, sheet } = shown();
  if (isTyping()) return;
  try {
    const answer = await fetch(`/jobs/${job}/rev`, { headers: { "X-Heatledger": "page" } });
    if (!answer.ok) return;
    const { rev } = await answer.json();
    const { rev: here, token } = drawing();
    if (String(rev) === here) return;
    const asked = new URLSearchParams(window.location.search);
    asked.set("sheet", sheet);
    asked.set("token", token);
    await ask("GET", `/jobs/${job}/after`, asked);
    say(`Changed elsewhere: this page now shows revision ${rev}.`);
  } catch {
    // The app does not answer; the next change will say so.
  }
}
