package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.Lot;

/**
 * A report of a lot, as its plant sent it.
 *
 * @param lot what it tells of
 * @param sha256 the SHA-256 of the report as received
 */
public record LotReport(Lot lot, String sha256) {}
