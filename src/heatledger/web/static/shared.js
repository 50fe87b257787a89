// What every module of the page needs: the job that is shown, and a word to a screen reader.

/** @returns {{job: string, sheet: string}} the job and sheet that the page shows */
export function shown() {
  return { job: document.body.dataset.job ?? "", sheet: document.body.dataset.sheet ?? "house" };
}

/** @returns {{rev: string, token: string, wait: boolean}} what the server called this drawing of the page */
export function drawing() {
  const data = document.getElementById("token")?.dataset ?? {};
  return { rev: data.rev ?? "0", token: data.token ?? "", wait: data.wait === "yes" };
}

/** The address of the page with other questions in it.
 * @param {Record<string, string>} asked @returns {string} */
export function address(asked) {
  const url = new URL(window.location.href);
  for (const [key, value] of Object.entries(asked)) {
    if (value) url.searchParams.set(key, value);
    else url.searchParams.delete(key);
  }
  return url.pathname + url.search;
}

/** Say something to who listens to the page.
 * @param {string} words */
export function say(words) {
  const place = document.getElementById("says");
  if (place) place.textContent = words;
}

/** Say something above the pages that must be seen; nothing takes it away.
 * @param {string} words */
export function notice(words) {
  const place = document.getElementById("notice");
  if (!place) return;
  place.textContent = words;
  place.hidden = !words;
}

const HELD = "entry-with-focus";

/** The entry that has focus. A part put in its place would lend its field, with what is typed in it, to
 * whichever entry stands there now, so the field is named while that is done.
 * @returns {HTMLElement | null} */
function held() {
  const field = document.activeElement;
  if (!(field instanceof HTMLElement) || field.dataset.entry === undefined || field.id) return null;
  // A slider and the fields of how well it is known stand beside the field of the same entry.
  if (field.dataset.trial !== undefined || field.dataset.how !== undefined) return null;
  field.id = HELD;
  return field;
}

/** An answer in which the entry that has focus has the same name as on the page.
 * @param {string} text @param {HTMLElement} field @returns {string} */
function heldIn(text, field) {
  const mark = ` data-entry="${field.dataset.entry}"`;
  for (let place = field.parentElement; place; place = place.parentElement) {
    const start = place.id ? text.indexOf(`hx-target="#${place.id}"`) : -1;
    if (start < 0) continue;
    const at = text.indexOf(mark, start);
    if (at < 0 || at > text.indexOf("</hx-partial>", start)) return text;
    return `${text.slice(0, at)} id="${HELD}"${text.slice(at)}`;
  }
  return text;
}

/** Whether the app did not answer when it was asked last. */
let lost = false;

/**
 * Ask the server, and let htmx put each part of the answer in its place.
 * @param {"GET" | "POST"} verb
 * @param {string} path
 * @param {Record<string, string> | URLSearchParams} values
 * @param {() => boolean} wanted whether the answer is still to be put in place when it comes
 * @returns {Promise<boolean>} whether it was answered and the answer put in place
 */
export async function ask(verb, path, values, wanted = () => true) {
  const query = new URLSearchParams(values);
  const url = verb === "GET" ? `${path}?${query}` : path;
  try {
    const answer = await fetch(url, {
      method: verb,
      headers: { "HX-Request": "true", "X-Heatledger": "page" },
      ...(verb === "POST" ? { body: query } : {}),
    });
    const text = await answer.text();
    if (!wanted()) return false;
    if (!answer.ok) {
      const plain = new DOMParser().parseFromString(text, "text/html").body.textContent ?? "";
      notice(plain.trim() || "This could not be done. Try again.");
      return false;
    }
    // What follows after a change leaves standing what was said of the change.
    if (verb === "POST" || lost) notice("");
    lost = false;
    const field = held();
    await window.htmx.swap({ text: field ? heldIn(text, field) : text, target: "#says", swap: "innerHTML", sourceElement: document.body });
    field?.removeAttribute("id");
    document.getElementById(HELD)?.removeAttribute("id");
    return true;
  } catch {
    lost = true;
    notice("The app does not answer. What you typed stands here still. Start it again, then try once more.");
    return false;
  }
}
