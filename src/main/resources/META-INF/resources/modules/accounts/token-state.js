// What a token is good for now.

/**
 * @param {Answer.Token} token
 * @param {number} now in milliseconds, as of the epoch
 * @returns {'revoked' | 'expired' | 'in use'}
 */
export function tokenState(token, now) {
  if (token.revoked) return 'revoked';
  return token.expires && Date.parse(token.expires) <= now ? 'expired' : 'in use';
}

/**
 * The end of a day, local, as a time of the API.
 *
 * @param {string} day as a date field gives it
 */
export const endOf = (day) => new Date(`${day}T23:59:59`).toISOString();
