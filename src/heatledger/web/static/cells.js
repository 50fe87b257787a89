// Arrows in a ledger table: from cell to cell. In an entry, left and right move the caret until its end.

const FOCUSABLE = "button, a[href], input.in, summary";
/** @type {Record<string, [number, number]>} rows and columns by key */
const STEPS = { ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] };

/** Listen for the arrows, also in tables that come later. */
export function watchCells() {
  document.addEventListener("keydown", (event) => {
    const step = STEPS[event.key];
    if (!step || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const here = event.target;
    if (!(here instanceof HTMLElement) || here instanceof HTMLSelectElement) return;
    const cell = here.closest("table.led td, table.led th");
    if (!(cell instanceof HTMLTableCellElement)) return;
    if (here instanceof HTMLInputElement && !leaves(here, step[1])) return;
    const next = beside(cell, step);
    if (!next) return;
    event.preventDefault();
    next.focus();
    if (next instanceof HTMLInputElement) next.select();
  });
}

/** Whether an arrow leads out of an entry: up and down always, sideways only from its end.
 * @param {HTMLInputElement} entry @param {number} sideways @returns {boolean} */
function leaves(entry, sideways) {
  if (entry.type === "range" || entry.type === "checkbox") return false;
  if (sideways === 0) return true;
  const [start, end] = [entry.selectionStart ?? 0, entry.selectionEnd ?? 0];
  if (start !== end) return start === 0 && end === entry.value.length;
  return sideways < 0 ? start === 0 : end === entry.value.length;
}

/** The first thing to focus in the next cell that has one.
 * @param {HTMLTableCellElement} cell @param {[number, number]} step @returns {HTMLElement | null} */
function beside(cell, [rows, columns]) {
  const table = cell.closest("table");
  const row = cell.parentElement;
  if (!table || !(row instanceof HTMLTableRowElement)) return null;
  const all = [...table.rows];
  let [r, c] = [all.indexOf(row) + rows, cell.cellIndex + columns];
  while (r >= 0 && r < all.length) {
    const cells = all[r]?.cells;
    if (!cells || c < 0 || (columns !== 0 && c >= cells.length)) return null;
    const found = cells[c]?.querySelector(FOCUSABLE);
    if (found instanceof HTMLElement && found.offsetParent) return found;
    if (rows === 0 && columns === 0) return null;
    r += rows;
    c += columns;
  }
  return null;
}
