// The audit trail in words, and what is asked of it.

/** @param {unknown} value */
const told = (value) => (value !== null && typeof value === 'object' ? JSON.stringify(value) : String(value));

/**
 * What an entry tells beside its reason, a line a detail.
 *
 * @param {Record<string, unknown> | null | undefined} details
 */
export const detailLines = (details) =>
  Object.entries(details ?? {}).map(([key, value]) => `${key.replaceAll('-', ' ')}: ${told(value)}`);

/**
 * How much of the trail is shown.
 *
 * @param {number} count
 * @param {boolean} isAll
 */
export function shownLine(count, isAll) {
  if (count === 0) return 'No entry fits.';
  return `${count} ${count === 1 ? 'entry' : 'entries'} shown, newest first.${isAll ? ' There are no older ones.' : ''}`;
}

/**
 * The filter that was filled in, without its empty fields. An action may be typed in words.
 *
 * @param {Record<string, string>} fields
 * @returns {Record<string, string>}
 */
export function auditFilter(fields) {
  const filled = Object.entries(fields).map(([name, text]) => [name, text.trim()]).filter(([, text]) => text);
  const filter = Object.fromEntries(filled);
  return filter.action ? { ...filter, action: filter.action.toLowerCase().replaceAll(' ', '-') } : filter;
}
