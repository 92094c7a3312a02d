// Addresses of the API and of the pages.

export const SIGN_IN = '/sign-in.html';
export const FIRST = '/';

/**
 * An address of the API; each part is made safe for a path.
 *
 * @param {...(string | number)} parts
 */
export const path = (...parts) => '/api/v1/' + parts.map(encodeURIComponent).join('/');

/**
 * The page of an order.
 *
 * @param {string} order
 */
export const orderAddress = (order) => `/order.html#/${encodeURIComponent(order)}`;

/**
 * The sign-in page, which leads back to this one.
 *
 * @param {{ pathname: string, search: string, hash: string }} here
 */
export const signInAddress = (here) => `${SIGN_IN}?next=${encodeURIComponent(here.pathname + here.search + here.hash)}`;

/**
 * Where to go after sign-in: an address of this very service, else the first page.
 *
 * @param {string} text
 * @param {string} origin
 */
export function nextAddress(text, origin) {
  const first = origin + FIRST;
  try {
    const next = new URL(text, origin);
    const ours = text.startsWith('/') && next.origin === origin && next.pathname !== SIGN_IN;
    // The whole address, not its path: a path that begins with two slashes would name another host.
    return ours ? next.href : first;
  } catch {
    return first;
  }
}
