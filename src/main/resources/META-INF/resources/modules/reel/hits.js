// Which of what was found is meant.

/** So many hits are asked for; the best come first. */
export const MOST_HITS = 20;

/**
 * The hit that a key leads to from the selected one, around the ends; -1 is none.
 *
 * @param {string} key
 * @param {number} selected
 * @param {number} count
 */
export function nextHit(key, selected, count) {
  if (count === 0) return -1;
  if (key === 'ArrowDown') return selected === count - 1 ? 0 : selected + 1;
  if (key === 'ArrowUp') return selected <= 0 ? count - 1 : selected - 1;
  return selected;
}

/**
 * The hit that is meant by exactly that text: the one of that very name, else the only one that differs by case, spaces and dashes
 * alone; null when there is none.
 *
 * <p>A part of a number never is a hit: a result would land on the wrong reel.
 *
 * @param {Answer.Hit[]} hits
 * @param {string} text
 */
export function exactHit(hits, text) {
  const same = hits.filter((hit) => hit.match === 'exact');
  return same.find((hit) => hit.name === text) ?? (same.length === 1 ? same[0] : null);
}

/** A person does not press Tab so soon after a character; a scanner sends each within a few milliseconds (common practice, no source). */
const SCANNED_WITHIN_MS = 60;

/**
 * Whether a key is the Tab that a scanner sends after a number, not that of a person who goes on.
 *
 * @param {{ key: string, shiftKey: boolean }} event
 * @param {number} sinceLast milliseconds since the key before
 */
export const endsScan = ({ key, shiftKey }, sinceLast) => key === 'Tab' && !shiftKey && sinceLast <= SCANNED_WITHIN_MS;

/**
 * Whether what is typed belongs where the focus is, the search box or another field for text or a number.
 *
 * @param {unknown} target
 */
export const takesText = (target) => target !== null && typeof target === 'object' && 'type' in target
  && (target.type === 'text' || target.type === 'search' || target.type === 'number');

/**
 * Whether a key pressed anywhere begins a scan: a character, not a command of the browser or a button's own key.
 *
 * @param {{ key: string, ctrlKey: boolean, metaKey: boolean, altKey: boolean }} event
 */
export const isScanned = ({ key, ctrlKey, metaKey, altKey }) =>
  [...key].length === 1 && key !== ' ' && !ctrlKey && !metaKey && !altKey;
