// A slider is a trial while it moves and an edit when it is let go.
import { ask, drawing, shown } from "./shared.js";
import { postChange } from "./entries.js";
import { inTurn } from "./turns.js";

let busy = false;
/** @type {HTMLInputElement | null} the slider that has moved since the last trial */
let moved = null;

/** Watch the sliders of the page, also those that come later. */
export function watchTrials() {
  document.addEventListener("input", (event) => {
    const slider = event.target;
    if (!(slider instanceof HTMLInputElement) || slider.dataset.trial === undefined) return;
    slider.setAttribute("aria-valuetext", amount(slider));
    moved = slider;
    void tryNext();
  });
  document.addEventListener("change", (event) => {
    const slider = event.target;
    if (!(slider instanceof HTMLInputElement) || slider.dataset.trial === undefined) return;
    event.stopPropagation();
    moved = null;
    void postChange({ do: "set", path: slider.dataset.entry ?? "", value: amount(slider) });
  }, true);
}

/** @param {HTMLInputElement} slider @returns {string} the value with its unit */
function amount(slider) {
  return `${slider.value} ${slider.dataset.unit ?? ""}`.trim();
}

/** One trial at a time, in turn with the edits: no trial is drawn over the edit that came after it. */
async function tryNext() {
  if (busy || !moved) return;
  busy = true;
  try {
    await inTurn(tryLast);
  } finally {
    busy = false;
  }
  void tryNext();
}

/** Try the place where the slider stands by now; nothing where it has been let go meanwhile. */
async function tryLast() {
  const slider = moved;
  moved = null;
  if (!slider) return;
  const { job, sheet } = shown();
  const asked = Object.fromEntries(new URLSearchParams(window.location.search));
  await ask("GET", `/jobs/${job}/trial`, {
    ...asked, sheet, token: drawing().token, path: slider.dataset.entry ?? "", value: amount(slider),
  });
}
