/** Rows of uploads, records, findings and sweeps. May use the core. */
@NullMarked
package dev.reelproof.store.result;

import org.jspecify.annotations.NullMarked;
