// Papers: once the first page of a paper is there, the others are asked for and put behind it.
import { ask } from "./shared.js";

/** Follow a paper that is being set, also one that is picked later. */
export function watchPapers() {
  document.addEventListener("load", follow, true);
  for (const each of document.querySelectorAll(".sheet-of img")) {
    if (each instanceof HTMLImageElement && each.complete) follow({ target: each });
  }
}

/** @param {{target: EventTarget | null}} event the picture that has come */
function follow({ target }) {
  if (!(target instanceof HTMLImageElement)) return;
  const pages = target.closest("#pages");
  if (!(pages instanceof HTMLElement)) return;
  const { follow: path } = pages.dataset;
  if (!path) return;
  delete pages.dataset.follow;
  const asked = new URL(path, window.location.href);
  ask("GET", asked.pathname, asked.searchParams);
}
