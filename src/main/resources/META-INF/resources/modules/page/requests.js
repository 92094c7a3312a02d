// Asking the service.

import { path } from './addresses.js';

/** What the service refused, in its own sentences. */
export class Refusal extends Error {
  /**
   * @param {Response} response
   * @param {Answer.Problem} body
   */
  constructor(response, body) {
    const faults = (body.errors ?? []).map((fault) => fault.message).filter((message) => message && message !== body.detail);
    super([body.detail || body.title || `The service answered ${response.status}.`, ...faults].join(' '));
    this.status = response.status;
    this.retryAfter = response.headers.get('Retry-After');
  }
}

/**
 * Whether this is a refusal of that status.
 *
 * @param {unknown} fault
 * @param {number} code
 */
export const isStatus = (fault, code) => fault instanceof Refusal && fault.status === code;

/**
 * Asks without saying who asks, beyond what the browser sends by itself; a 401 is an error like others.
 *
 * @param {string} address
 * @param {RequestInit} [options]
 * @returns {Promise<any>}
 */
export async function publicJson(address, options = {}) {
  let response;
  try {
    response = await fetch(address, {
      credentials: 'same-origin', ...options, headers: { Accept: 'application/json', ...options.headers },
    });
  } catch {
    throw new Error('The service did not answer. Check the network and try again.');
  }
  const body = await response.json().catch(() => ({}));
  if (!response.ok) throw new Refusal(response, body);
  return body;
}

/**
 * The parts of a request that sends JSON.
 *
 * @param {string} method
 * @param {unknown} body
 */
export const jsonBody = (method, body) =>
  ({ method, body: JSON.stringify(body), headers: { 'Content-Type': 'application/json' } });

/** @type {Promise<Answer.Status> | null} */
let asked = null;

/** What this installation is; asked once a page. */
export function status() {
  asked ??= publicJson(path('status'));
  return asked;
}
