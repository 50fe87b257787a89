// The callout of a working: the sheet at once, the line when the lines of the revision have been numbered.
import { shown } from "./shared.js";

/** Watch for workings whose line follows; each is asked for once. */
export function watchCallouts() {
  const right = document.getElementById("right");
  if (!right) return;
  new MutationObserver(look).observe(right, { childList: true, subtree: true });
  look();
}

function look() {
  for (const each of document.querySelectorAll('#working .call[data-line="follows"]')) {
    if (each instanceof HTMLElement) follow(each);
  }
}

/** @returns {string} the path of the figure that is open by now: a mark may have passed on to another working */
function opened() {
  return new URL(window.location.href).searchParams.get("open") ?? "";
}

/** @param {HTMLElement} mark the callout that has a sheet and no line yet */
async function follow(mark) {
  mark.dataset.line = "asked";
  const path = opened();
  const asked = new URLSearchParams({ path });
  try {
    const answer = await fetch(`/jobs/${shown().job}/callout?${asked}`, { headers: { "HX-Request": "true" } });
    const text = answer.ok ? await answer.text() : "";
    const made = new DOMParser().parseFromString(text, "text/html").body.firstElementChild;
    if (made instanceof HTMLElement && made.dataset.line === undefined && mark.isConnected && path === opened()) mark.replaceWith(made);
  } catch {
    // The sheet stands there all the same.
  }
}
