// What the form of an account changes.

import { rolesThat } from './roles.js';

/**
 * What a form differs by from the account as it was; null when nothing was changed.
 *
 * @param {Answer.Account} account
 * @param {{ displayName: string, roles: string[], active: boolean, password: string, reason: string }} form
 */
export function accountChange(account, { displayName, roles, active, password, reason }) {
  const before = rolesThat((role) => account.roles.includes(role));
  const after = rolesThat((role) => roles.includes(role));
  const change = {
    ...(displayName !== account.displayName && { displayName }),
    ...(before.join() !== after.join() && { roles: after }),
    ...(active !== account.active && { active }),
    ...(password && { password }),
  };
  return Object.keys(change).length ? { ...change, reason } : null;
}
