/** Signing in, accounts, tokens, approvals and the reading of the audit trail: who may, what is kept, what the trail tells. */
@NullMarked
package dev.reelproof.app.access;

import org.jspecify.annotations.NullMarked;
