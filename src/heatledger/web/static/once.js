// A double click is one click: what makes or takes away a thing is not done twice.

const SOON = 600;
/** @type {Map<string, number>} when each form was last sent, by what it makes and where */
const sent = new Map();

/** @param {HTMLFormElement} form @returns {string} */
function named(form) {
  const given = new FormData(form);
  return [form.id, form.getAttribute("action"), given.get("what"), given.get("path"), given.get("line"), given.get("value")].join(" ");
}

/** Watch for a second click or Enter that follows at once. Undo, Redo and the order of things may be pressed fast. */
export function watchTwice() {
  document.addEventListener("click", (event) => {
    const target = event.target instanceof Element ? event.target.closest("[data-do]") : null;
    if (!(target instanceof HTMLElement) || event.detail < 2 || target.dataset.do === "move") return;
    event.preventDefault();
    event.stopImmediatePropagation();
  }, true);
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || form.method !== "post") return;
    const name = named(form);
    const now = performance.now();
    if (now - (sent.get(name) ?? -SOON) < SOON) {
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    sent.set(name, now);
  }, true);
}
