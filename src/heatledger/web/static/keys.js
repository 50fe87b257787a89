// Keys: a sheet by its number, find, undo, the working and back.
import { moveRevision, whenKept } from "./entries.js";
import { goBack } from "./workings.js";

/** @param {EventTarget | null} target @returns {boolean} whether someone is typing there */
function isTyping(target) {
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}

/** @param {EventTarget | null} field @returns {boolean} whether an entry stands as it is kept, so that undo is of the job */
function isAsKept(field) {
  return field instanceof HTMLInputElement && field.dataset.kept === field.value;
}

/** @type {HTMLElement | null} */
let figure = null;

/** Listen for the keys of the app. */
export function watchKeys() {
  document.addEventListener("keydown", (event) => {
    if (event.altKey && !event.ctrlKey && /^[1-8]$/.test(event.key)) {
      event.preventDefault();
      void whenKept().then(() => toSheet(event.key));
      return;
    }
    const undo = event.key.toLowerCase() === "z" && (event.ctrlKey || event.metaKey);
    if (isTyping(event.target) && !(undo && isAsKept(event.target))) return;
    if (undo) {
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

/** @param {string} number */
function toSheet(number) {
  const link = document.querySelector(`#index li:nth-child(${number}) a`);
  if (link instanceof HTMLElement) link.click();
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
