// What holds of every password that is chosen.

const SHORTEST = 12;
const LONGEST = 72;

/**
 * Why a new password would be refused, in a sentence; empty when it would not.
 *
 * @param {string} password
 */
export function passwordFault(password) {
  const bytes = new TextEncoder().encode(password).length;
  if (bytes < SHORTEST) return `The password needs at least ${SHORTEST} characters.`;
  return bytes <= LONGEST ? '' : `The password is too long: it takes ${bytes} bytes, and at most ${LONGEST} can be kept.`;
}

/**
 * Why a new password typed twice would be refused.
 *
 * @param {string} password
 * @param {string} again
 */
export const chosenFault = (password, again) =>
  passwordFault(password) || (password === again ? '' : 'The two passwords differ. Type the same one twice.');

/**
 * Says below a password field that caps lock is on.
 *
 * @param {HTMLElement} field
 * @param {HTMLElement} hint
 */
export function watchCapsLock(field, hint) {
  /** @param {KeyboardEvent} event */
  const look = (event) => {
    // Not every event that a browser sends as a key has this, filling in by a password manager among them.
    if (event.getModifierState) hint.hidden = !event.getModifierState('CapsLock');
  };
  field.addEventListener('keydown', look);
  field.addEventListener('keyup', look);
  field.addEventListener('blur', () => { hint.hidden = true; });
}
