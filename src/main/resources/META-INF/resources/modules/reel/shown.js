// What stands on the page now.

/**
 * @typedef {object} Shown
 * @property {Answer.Session | null} who who reads it
 * @property {Answer.Reel | null} reel null on the start page
 * @property {Answer.Record | null} record null while the reel has not been tested
 */

/** @type {Shown} */
export const shown = { who: null, reel: null, record: null };

/** Turns: what was begun in one is no longer wanted once the next has begun. */
export function turns() {
  let newest = 0;
  return {
    /** Begins a turn; what it gives says whether that turn is still the newest. */
    next() {
      const mine = ++newest;
      return () => mine === newest;
    },
  };
}
