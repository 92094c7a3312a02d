/** Keeps accounts, sessions, tokens, approvals and the audit trail. Knows no rule of access: {@code app.access} asks those. */
package dev.reelproof.store.access;
