// When two names of accounts are one.

/** @param {string} name */
const folded = (name) => name.normalize('NFKC').toLowerCase();

/**
 * Names differ neither by case nor by the form of their characters.
 *
 * @param {string} one
 * @param {string} other
 */
export const sameName = (one, other) => folded(one) === folded(other);
