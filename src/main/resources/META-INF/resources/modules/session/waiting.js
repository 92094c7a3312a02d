// How long to wait before the next attempt.

const SECONDS_UNSAID = 60;
const MINUTE = 60;

/**
 * The seconds to wait; Retry-After is a number of seconds or a date.
 *
 * @param {string | null} retryAfter
 * @param {number} now in milliseconds, as of the epoch
 */
export function secondsToWait(retryAfter, now) {
  const text = retryAfter ?? '';
  const told = /^\d+$/.test(text) ? Number(text) : Math.ceil((Date.parse(text) - now) / 1000);
  return Number.isFinite(told) ? Math.max(1, told) : SECONDS_UNSAID;
}

/** @param {number} seconds */
export function spoken(seconds) {
  if (seconds === 1) return '1 second';
  return seconds < 2 * MINUTE ? `${seconds} seconds` : `${Math.ceil(seconds / MINUTE)} minutes`;
}
