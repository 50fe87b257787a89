// One after the other: changes, trials and what is taken in from elsewhere share one queue.

/** @type {Promise<void>} what has been begun and is not done yet */
let queue = Promise.resolve();

/** Do something when all that was asked for before has been put in place, so that no change is laid on an old
 * revision and no answer on a page that is newer. A fault stops none of those that follow.
 * @param {() => Promise<void>} work @returns {Promise<void>} */
export function inTurn(work) {
  const done = queue.then(work);
  queue = done.catch(() => undefined);
  return done;
}
