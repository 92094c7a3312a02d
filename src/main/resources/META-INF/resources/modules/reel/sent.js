// What the service said to a result that was sent.

/** @typedef {{ kind: 'taken', isNew: boolean, record: Answer.Record | null } | { kind: 'refused' | 'signed-out', problem: Answer.Problem }} Sent */

const TAKEN_BEFORE = 200;
const TAKEN = 201;
const NOT_SIGNED_IN = 401;

const SIGNED_OUT = { title: 'you are signed out', detail: 'The file was not taken. Sign in again, then drop it again.' };

/**
 * @param {number} status
 * @param {string} text
 * @returns {Sent}
 */
export function outcomeOf(status, text) {
  if (status === TAKEN || status === TAKEN_BEFORE) {
    const record = /** @type {Answer.Record | null} */ (objectIn(text));
    return { kind: 'taken', isNew: status === TAKEN, record };
  }
  if (status === NOT_SIGNED_IN) return { kind: 'signed-out', problem: SIGNED_OUT };
  return { kind: 'refused', problem: objectIn(text) ?? { title: `The service answered ${status}.` } };
}

/** @param {string} text */
function objectIn(text) {
  try {
    const answer = JSON.parse(text);
    return answer !== null && typeof answer === 'object' ? answer : null;
  } catch {
    return null;
  }
}
