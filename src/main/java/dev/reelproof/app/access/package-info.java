/** Signing in, accounts, tokens, approvals and the reading of the audit trail. */
package dev.reelproof.app.access;
