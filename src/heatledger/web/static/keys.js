// Keys: a sheet by its number, find, undo, the working and back.
import { moveRevision } from "./entries.js";
import { goBack } from "./workings.js";

/** @param {EventTarget | null} target @returns {boolean} whether someone is typing there */
function isTyping(target) {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}

/** @type {HTMLElement | null} */
let figure = null;

/** Listen for the keys of the app. */
export function watchKeys() {
  document.addEventListener("keydown", (event) => {
    if (event.altKey && !event.ctrlKey && /^[1-8]$/.test(event.key)) {
      event.preventDefault();
      const link = document.querySelector(`#index li:nth-child(${event.key}) a`);
      if (link instanceof HTMLElement) link.click();
      return;
    }
    if (isTyping(event.target)) return;
    if (event.key.toLowerCase() === "z" && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      moveRevision(event.shiftKey ? "redo" : "undo", 0);
    } else if (event.key === "F6") {
      event.preventDefault();
      toWorkingAndBack();
    } else if (event.key === "Backspace" && event.target instanceof Element && event.target.closest("#working")) {
      event.preventDefault();
      goBack();
    } else if (event.key === "/" && !event.ctrlKey && !event.metaKey) {
      const find = document.querySelector("[data-find]");
      if (find instanceof HTMLElement) {
        event.preventDefault();
        find.click();
      }
    }
  });
}

function toWorkingAndBack() {
  const working = document.getElementById("working");
  const here = document.activeElement;
  if (working && here instanceof HTMLElement && !working.contains(here)) {
    figure = here;
    const first = working.querySelector("button, a");
    if (first instanceof HTMLElement) first.focus();
    return;
  }
  const open = document.querySelector('#left button.fig[aria-expanded="true"], #strip button.fig[aria-expanded="true"]');
  const back = figure?.isConnected ? figure : open;
  if (back instanceof HTMLElement) back.focus();
}
