// A double click is one click: what makes or takes away a thing is not done twice.

const SOON = 600;
/** @type {Map<string, {when: number, typed: string}>} when each form was last sent, by what it makes and where */
const sent = new Map();

/** @param {HTMLFormElement} form @returns {string} */
function named(form) {
  const given = new FormData(form);
  return [form.id, form.getAttribute("action"), given.get("what"), given.get("path"), given.get("line")].join(" ");
}

/** @param {HTMLFormElement} form @returns {string} what is typed in it, blank once it has been emptied */
function typedIn(form) {
  const fields = [...form.querySelectorAll("input:not([type=hidden]), textarea")];
  return fields.map((each) => /** @type {HTMLInputElement} */ (each).value).join("\n").trim();
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
    const typed = typedIn(form);
    const last = sent.get(name);
    // What was mended meanwhile is another form, however soon it comes.
    if (last && now - last.when < SOON && (!typed || typed === last.typed)) {
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    sent.set(name, { when: now, typed });
  }, true);
}
