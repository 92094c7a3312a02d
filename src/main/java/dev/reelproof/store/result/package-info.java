/** Rows of uploads, records, findings and sweeps. May use the core. */
package dev.reelproof.store.result;
