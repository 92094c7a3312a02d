// A request whose progress is seen, which fetch does not tell.

import { freshSession } from '../page/session.js';
import { outcomeOf } from './sent.js';

/** @typedef {import('./sent.js').Sent} Sent */

const BROKE = { title: 'no answer came',
  detail: 'The connection to the service broke. Send the file again: a file that was taken already is not taken twice.' };

/**
 * @param {string} address
 * @param {{ body: File | FormData, type: string | null }} parcel
 * @param {(share: number) => void} tell told how much of it is sent, 0 to 1
 * @returns {Promise<Sent>}
 */
export async function send(address, { body, type }, tell) {
  // Signed out meanwhile: the service's own 401 says so.
  const who = await freshSession().catch(() => null);
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    request.open('POST', address);
    request.setRequestHeader('Accept', 'application/json');
    if (who?.csrf) request.setRequestHeader('X-CSRF-Token', who.csrf);
    if (type) request.setRequestHeader('Content-Type', type);
    request.upload.addEventListener('progress', (event) => {
      if (event.lengthComputable) tell(event.total ? event.loaded / event.total : 1);
    });
    request.addEventListener('error', () => resolve({ kind: 'refused', problem: BROKE }));
    request.addEventListener('load', () => resolve(outcomeOf(request.status, request.responseText)));
    request.send(body);
  });
}
