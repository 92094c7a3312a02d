/** Tamper evidence: keeps the log going, gives proofs that a row is in it, checks the database against it. */
@NullMarked
package dev.reelproof.app.seal;

import org.jspecify.annotations.NullMarked;
