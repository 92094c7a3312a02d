// The roles that there are, in the order in which they are offered.

export const ROLES = ['technician', 'customer-service', 'engineer', 'quality-manager', 'administrator'];

/**
 * Those of these roles that there are, in that order.
 *
 * @param {(role: string) => boolean} has
 */
export const rolesThat = (has) => ROLES.filter(has);
