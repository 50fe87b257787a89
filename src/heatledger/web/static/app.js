// The app in the browser: opens workings, posts one change at a time, moves between revisions.
import { openFigure, goBack, keepTrail } from "./workings.js";
import { watchCallouts } from "./callout.js";
import { watchEntries, postChange, moveRevision } from "./entries.js";
import { watchFind } from "./find.js";
import { watchCells } from "./cells.js";
import { watchKeys } from "./keys.js";
import { watchKnown } from "./known.js";
import { watchTwice } from "./once.js";
import { watchOffers } from "./offers.js";
import { watchReadings } from "./readings.js";
import { watchPapers } from "./papers.js";
import { watchRecords } from "./records.js";
import { watchRevisions } from "./revisions.js";
import { watchTrials } from "./trial.js";

document.addEventListener("click", (event) => {
  const target = event.target instanceof Element ? event.target : null;
  const button = target?.closest("button, a, summary");
  if (!(button instanceof HTMLElement)) return;
  if (button.matches('button.fig[name="open"]')) {
    event.preventDefault();
    openFigure(button.getAttribute("value") ?? "", button);
  } else if (button.matches("[data-back]")) {
    event.preventDefault();
    goBack();
  } else if (button.dataset.move) {
    event.preventDefault();
    moveRevision(button.dataset.move, Number(button.dataset.number ?? 0));
  } else if (button.dataset.do) {
    event.preventDefault();
    const sure = button.dataset.sure;
    if (sure && !window.confirm(sure)) return;
    const name = button.dataset.nameFrom ? readFrom(button.dataset.nameFrom) : (button.dataset.name ?? "");
    postChange({ do: button.dataset.do, path: button.dataset.path ?? "", value: button.dataset.value ?? "", name });
  } else if (button.dataset.withdraw !== undefined) {
    event.preventDefault();
    postChange({ path: button.dataset.withdraw }, "withdraw");
  } else if (button.matches("[data-print]")) {
    window.print();
  }
});

/** The text of the field that a button names.
 * @param {string} id @returns {string} */
function readFrom(id) {
  const field = document.getElementById(id);
  return field instanceof HTMLInputElement || field instanceof HTMLSelectElement ? field.value : "";
}

watchTwice();
watchTrials();
watchEntries();
watchKnown();
watchOffers();
watchRecords();
watchReadings();
watchRevisions();
watchFind();
watchKeys();
watchCells();
watchPapers();
watchCallouts();
keepTrail();
