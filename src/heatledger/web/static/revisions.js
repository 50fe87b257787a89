// Two people on one job: a page that was left alone takes in what was changed elsewhere when it is looked at again.
import { ask, drawing, say, shown } from "./shared.js";

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
  return field instanceof HTMLInputElement && field.dataset.kept !== undefined && field.value !== field.dataset.kept;
}

/** Ask which revision stands, and take in what differs from this page. */
async function look() {
  const { job, sheet } = shown();
  if (!job || busy || isTyping()) return;
  busy = true;
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
  } finally {
    busy = false;
  }
}
