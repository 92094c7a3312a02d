// Certificate numbers as people and scanners give them.

const NUMBER = /[A-Z][A-Z0-9]{0,11}-[0-9]{4}-[0-9]{6}/;

/**
 * The number in a text; a scanner may give a whole address that holds it. Without one, the text itself.
 *
 * @param {string} text
 */
export function numberIn(text) {
  const plain = text.trim().toUpperCase();
  return plain.match(NUMBER)?.[0] ?? plain;
}
