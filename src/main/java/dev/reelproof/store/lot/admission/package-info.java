/** What the admission of reported lots reads and writes: known lots, stocks, step runs, overlapping inputs and reports that wait. */
@NullMarked
package dev.reelproof.store.lot.admission;

import org.jspecify.annotations.NullMarked;
