// What a field offers while one types: fetched when the field has focus, once for a revision.
import { drawing, shown } from "./shared.js";

/** @type {Map<string, Promise<HTMLElement[]>>} */
const kept = new Map();
/** The revision they were fetched for: a change may add what can be named. */
let fetchedFor = "";

/** @param {string} of @param {string} path @returns {Promise<HTMLElement[]>} */
async function fetched(of, path) {
  const query = new URLSearchParams({ of, path });
  try {
    const answer = await fetch(`/jobs/${shown().job}/offers?${query}`, { headers: { "HX-Request": "true" } });
    if (!answer.ok) return [];
    const made = new DOMParser().parseFromString(`<datalist>${await answer.text()}</datalist>`, "text/html");
    return [...made.querySelectorAll("option")];
  } catch {
    return []; // The app does not answer; one can type all the same.
  }
}

/** Watch which field has focus and give it its list. */
export function watchOffers() {
  const list = document.createElement("datalist");
  list.id = "offers";
  document.body.append(list);
  document.addEventListener("focusin", async (event) => {
    const field = event.target;
    if (!(field instanceof HTMLInputElement) || !field.dataset.offer) return;
    const path = field.dataset.entry ?? "";
    const { rev } = drawing();
    if (rev !== fetchedFor) kept.clear();
    fetchedFor = rev;
    const key = `${field.dataset.offer} ${field.dataset.offer === "catalog" ? path : ""}`;
    if (!kept.has(key)) kept.set(key, fetched(field.dataset.offer, path));
    const options = await kept.get(key);
    if (document.activeElement !== field) return;
    list.replaceChildren(...(options ?? []).map((each) => each.cloneNode(true)));
    field.setAttribute("list", list.id);
  });
}
