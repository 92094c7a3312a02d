/**
 * The doors: who is calling, what each role may do, who did what, and what needs two persons.
 *
 * <p>Uses no other room; the store writes here what it changed, in the same transaction.
 */
package dev.reelproof.access;
