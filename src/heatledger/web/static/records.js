// Small forms of a page that make something, and links that lead to an entry.
import { postChange } from "./entries.js";

/** @returns {boolean} whether the last change was refused */
function refused() {
  const place = document.getElementById("notice");
  return Boolean(place && !place.hidden);
}

/** Post a form as one change. What was typed stays where it is refused.
 * @param {HTMLFormElement} form */
async function make(form) {
  /** @type {Record<string, string>} */
  const given = {};
  for (const [key, value] of new FormData(form)) if (typeof value === "string") given[key] = value;
  const next = given.next ?? "";
  await postChange(given, "make");
  if (refused()) {
    document.getElementById("notice")?.scrollIntoView({ block: "nearest" });
    return;
  }
  if (next.startsWith("/") && !next.startsWith("//")) window.location.assign(next);
  else if (form.isConnected) clear(form, given);
}

/** Empty the fields that still hold what was posted; what was typed meanwhile stays.
 * @param {HTMLFormElement} form @param {Record<string, string>} posted */
function clear(form, posted) {
  for (const each of form.elements) {
    if (each instanceof HTMLInputElement && each.type !== "hidden" && each.value === posted[each.name]) each.value = each.defaultValue;
  }
}

/** Put the cursor where a link has asked for it: the part of the address after its mark names an entry. */
function toEntry() {
  const mark = "#entry=";
  if (!window.location.hash.startsWith(mark)) return;
  const path = CSS.escape(decodeURIComponent(window.location.hash.slice(mark.length)));
  const field = document.querySelector(`#right [data-entry="${path}"]`) ?? document.querySelector(`[data-entry="${path}"]`);
  if (!(field instanceof HTMLElement)) return;
  const folded = field.closest("details");
  if (folded) folded.open = true;
  field.scrollIntoView({ block: "center" });
  field.focus();
}

/** Watch the forms, and links that name an entry. */
export function watchRecords() {
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (!(form instanceof HTMLFormElement) || form.dataset.make === undefined) return;
    event.preventDefault();
    make(form);
  });
  document.addEventListener("keydown", (event) => {
    const field = event.target;
    if (event.key !== "Enter" || !(field instanceof HTMLInputElement) || !field.id || event.isComposing) return;
    const button = document.querySelector(`[data-name-from="${CSS.escape(field.id)}"]`);
    if (button instanceof HTMLButtonElement) button.click();
  });
  window.addEventListener("hashchange", toEntry);
  toEntry();
}
