package dev.reelproof.genealogy;

/**
 * What is wrong with a lot's report.
 *
 * @param where JSON pointer into the report, such as {@code /inputs/0/lot}
 * @param message what is wrong and what would be right
 */
public record LotFault(String where, String message) {}
