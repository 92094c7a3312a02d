// Who is signed in, and asking as this person.

import { path, signInAddress } from './addresses.js';
import { isStatus, jsonBody, publicJson } from './requests.js';

const NOT_SIGNED_IN = 401;
const SAFE_METHODS = new Set(['GET', 'HEAD']);

/** @type {Promise<Answer.Session | null> | null} */
let asked = null;

/** Who is signed in; null when nobody is. */
export function session() {
  asked ??= publicJson(path('session')).catch((fault) => {
    asked = null;
    if (isStatus(fault, NOT_SIGNED_IN)) return null;
    throw fault;
  });
  return asked;
}

/** Asked anew before a change: a sign-in in another tab brings another CSRF token. */
export function freshSession() {
  asked = null;
  return session();
}

/**
 * Whether this person may do that.
 *
 * @param {Answer.Session | null} who
 * @param {string} action
 */
export const may = (who, action) => Boolean(who?.may.includes(action));

/** @returns {Promise<never>} */
export function goToSignIn() {
  location.replace(signInAddress(location));
  // Nothing after this is to run: the browser is leaving.
  return new Promise(() => {});
}

/**
 * Asks as the person who is signed in; sends the browser to the sign-in page when nobody is.
 *
 * @param {string} address
 * @param {RequestInit} [options]
 * @returns {Promise<any>}
 */
export async function getJson(address, options = {}) {
  /** @type {Record<string, string>} */
  const proof = {};
  if (!SAFE_METHODS.has(options.method ?? 'GET')) {
    const who = await freshSession();
    if (!who) return goToSignIn();
    if (who.csrf) proof['X-CSRF-Token'] = who.csrf;
  }
  try {
    return await publicJson(address, { ...options, headers: { ...options.headers, ...proof } });
  } catch (fault) {
    if (isStatus(fault, NOT_SIGNED_IN)) return goToSignIn();
    throw fault;
  }
}

/**
 * Sends JSON as the person who is signed in.
 *
 * @param {string} method
 * @param {string} address
 * @param {unknown} body
 */
export const sendJson = (method, address, body) => getJson(address, jsonBody(method, body));
