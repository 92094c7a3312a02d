/** HTTP of sign-in, accounts, tokens, approvals and audit; how a request says who calls. */
@NullMarked
package dev.reelproof.api.access;

import org.jspecify.annotations.NullMarked;
