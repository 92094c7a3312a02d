/** HTTP of sign-in, accounts, tokens, approvals and audit; how a request says who calls. */
package dev.reelproof.api.access;
