package dev.reelproof.wording;

/**
 * A limit over a stretch of frequency where it follows one formula.
 *
 * @param figures the figure or formula with its sign and unit
 * @param range where it holds; empty where frequency plays no part
 */
public record LimitPart(String figures, String range) {

    /** Both in one text. */
    public String words() {
        return range.isEmpty() ? figures : figures + ", " + range;
    }
}
