// The right page holds the working of the number last touched; a trail leads back.
import { ask, address, say, shown } from "./shared.js";

/** @type {string[]} */
const trail = [];

/** @returns {string} the path of the figure that is open */
function opened() {
  return new URL(window.location.href).searchParams.get("open") ?? "";
}

/** @returns {string} the what if whose design the open figure is of; empty for the job itself */
function laidIn() {
  return new URL(window.location.href).searchParams.get("laid") ?? "";
}

/** Take up the trail where the page was opened, and where the browser goes back or forward to. */
export function keepTrail() {
  takeUp(window.history.state);
  markAgain();
  window.addEventListener("popstate", (event) => {
    takeUp(event.state);
    void show(opened());
  });
}

/** @param {unknown} state what the browser kept with an address */
function takeUp(state) {
  const kept = state && typeof state === "object" && "trail" in state ? state.trail : [];
  trail.splice(0, trail.length, ...(Array.isArray(kept) ? kept.map(String) : []));
}

/** Open the working of a figure.
 * @param {string} path
 * @param {HTMLElement | null} from the button that was touched */
export async function openFigure(path, from) {
  const inside = Boolean(from?.closest("#working"));
  const before = opened();
  // A figure that stands in the trail is gone back to, so that nobody walks in circles.
  const at = trail.indexOf(path);
  if (!inside) trail.length = 0;
  else if (at >= 0) trail.length = at;
  else if (before && before !== path) trail.push(before);
  // A figure of a what if opens in the design of that what if, and so do those inside its working.
  const laid = inside ? laidIn() : (from?.dataset.laid ?? "");
  window.history.pushState({ trail: [...trail] }, "", address({ open: path, laid }));
  await show(path);
  if (inside) focusInside(before);
}

/** Back along the trail. */
export async function goBack() {
  const path = trail.pop();
  if (path === undefined) return;
  const before = opened();
  window.history.pushState({ trail: [...trail] }, "", address({ open: path }));
  await show(path);
  focusInside(before);
}

/** Put the cursor on the figure one comes from, else on the first one of the working.
 * @param {string} path */
function focusInside(path) {
  const working = document.getElementById("working");
  const place = working?.querySelector(`button.fig[value="${CSS.escape(path)}"]`) ?? working?.querySelector("button.fig");
  if (place instanceof HTMLElement) place.focus();
}

/** Workings asked for so far: only the last one is put in place, whichever answer comes last. */
let count = 0;

/** @param {string} path */
async function show(path) {
  const mine = ++count;
  const { job, sheet } = shown();
  const url = new URL(window.location.href);
  /** @type {Record<string, string>} */
  const asked = { open: path, sheet, trail: trail.join(",") };
  for (const key of ["pick", "laid", "try"]) asked[key] = url.searchParams.get(key) ?? "";
  if (!await ask("GET", `/jobs/${job}/working`, asked, () => mine === count)) return;
  markOpen(path);
  const working = document.getElementById("working");
  working?.scrollIntoView({ block: "nearest", behavior: "instant" });
  say(path ? "Working shown on the right page" : "Working closed");
}

/** Mark again what belongs to the open figure, where the page was drawn anew. */
export function markAgain() {
  if (opened()) markOpen(opened());
}

/** Wash every button of the open figure, and mark the rows that went into it.
 * @param {string} path */
export function markOpen(path) {
  for (const each of document.querySelectorAll('button.fig[name="open"]')) {
    const laid = each instanceof HTMLElement ? (each.dataset.laid ?? "") : "";
    const isOpen = each.getAttribute("value") === path && (laid === laidIn() || each.closest("#working") !== null);
    each.setAttribute("aria-expanded", String(isOpen));
  }
  const parts = new Set(
    [...document.querySelectorAll("#working .body button.fig")].map((each) => each.getAttribute("value")),
  );
  for (const row of document.querySelectorAll("#left tr, #left li")) {
    const figures = [...row.querySelectorAll('button.fig[name="open"]')];
    row.classList.toggle("goes-in", figures.some((each) => parts.has(each.getAttribute("value"))));
  }
}
