/** Rows of accounts, sessions, tokens, approvals and the audit trail. */
package dev.reelproof.store.access;
