// A dialog with one form: what it refuses is said inside it, and it stays open.

import { button, byId, dialog, onSubmit } from '../page/dom.js';
import { done, sentence } from '../page/notices.js';

/**
 * @param {string} name
 * @param {string} text
 */
function sayFault(name, text) {
  byId(`${name}-fault`).textContent = text;
  byId(`${name}-fault`).hidden = !text;
}

/**
 * Runs what the dialog's button does, and closes the dialog once that is done.
 *
 * @param {string} name
 * @param {() => Promise<void>} act
 */
export function onDialog(name, act) {
  byId(`${name}-cancel`).addEventListener('click', () => dialog(`${name}-dialog`).close());
  onSubmit(`${name}-form`, async () => {
    sayFault(name, '');
    button(`${name}-save`).disabled = true;
    try {
      await act();
      dialog(`${name}-dialog`).close();
    } catch (fault) {
      sayFault(name, sentence(fault));
    } finally {
      button(`${name}-save`).disabled = false;
    }
  });
}

/** @param {string} name */
export function openDialog(name) {
  done('');
  sayFault(name, '');
  dialog(`${name}-dialog`).showModal();
}
