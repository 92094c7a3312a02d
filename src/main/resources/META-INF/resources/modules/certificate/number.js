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

/**
 * Which number a dropped file is to be compared with: what was typed, else what its name holds; empty when neither has one.
 *
 * @param {string} typed
 * @param {string} fileName
 */
export function numberFor(typed, fileName) {
  if (typed.trim()) return numberIn(typed);
  return fileName.toUpperCase().match(NUMBER)?.[0] ?? '';
}

/** @param {ArrayBuffer} bytes */
export const hexadecimal = (bytes) => [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
