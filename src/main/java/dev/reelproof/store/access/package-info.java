/** Keeps accounts, sessions, tokens, approvals and the audit trail. Knows no rule of access: {@code app.access} asks those. */
@NullMarked
package dev.reelproof.store.access;

import org.jspecify.annotations.NullMarked;
