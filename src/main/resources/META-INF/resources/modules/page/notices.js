// What the page says to the person: what went wrong, and what was done.

import { byId } from './dom.js';

/**
 * @param {string} id
 * @param {string} text
 */
function say(id, text) {
  byId(id).textContent = text;
  byId(id).hidden = !text;
}

/**
 * Says what went wrong; an empty text takes it away.
 *
 * @param {string} text
 */
export const notice = (text) => say('notice', text);

/**
 * Says in a live region that something was done.
 *
 * @param {string} text
 */
export const done = (text) => say('done', text);

/**
 * What was thrown, in a sentence.
 *
 * @param {unknown} fault
 */
export const sentence = (fault) => (fault instanceof Error ? fault.message : String(fault));

/**
 * Says what was thrown: for the end of a promise.
 *
 * @param {unknown} fault
 */
export const noticeFault = (fault) => notice(sentence(fault));
