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

/** Begin the trail where the page was opened. */
export function keepTrail() {
  window.addEventListener("popstate", () => show(opened()));
}

/** Open the working of a figure.
 * @param {string} path
 * @param {HTMLElement | null} from the button that was touched */
export async function openFigure(path, from) {
  const inside = Boolean(from?.closest("#working"));
  const before = opened();
  if (inside && before && before !== path) trail.push(before);
  if (!inside) trail.length = 0;
  // A figure of a what if opens in the design of that what if, and so do those inside its working.
  const laid = inside ? laidIn() : (from?.dataset.laid ?? "");
  window.history.pushState({}, "", address({ open: path, laid }));
  await show(path);
  if (inside) document.getElementById("working")?.querySelector("button")?.focus();
}

/** Back along the trail. */
export async function goBack() {
  const path = trail.pop();
  if (path === undefined) return;
  window.history.pushState({}, "", address({ open: path }));
  await show(path);
}

/** @param {string} path */
async function show(path) {
  const { job, sheet } = shown();
  const url = new URL(window.location.href);
  /** @type {Record<string, string>} */
  const asked = { open: path, sheet, trail: trail.join(",") };
  for (const key of ["pick", "laid", "try"]) asked[key] = url.searchParams.get(key) ?? "";
  await ask("GET", `/jobs/${job}/working`, asked);
  markOpen(path);
  const working = document.getElementById("working");
  working?.scrollIntoView({ block: "nearest", behavior: "instant" });
  say(path ? "Working shown on the right page" : "Working closed");
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
    [...document.querySelectorAll("#working [data-in]")].map((each) => each.getAttribute("data-in")),
  );
  for (const row of document.querySelectorAll("#left tr, #left li")) {
    const figure = row.querySelector('button.fig[name="open"]');
    row.classList.toggle("goes-in", parts.has(figure?.getAttribute("value") ?? ""));
  }
}
