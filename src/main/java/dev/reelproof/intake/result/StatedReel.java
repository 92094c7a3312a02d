package dev.reelproof.intake.result;

/**
 * The number of the reel that a part of an upload says it is of.
 *
 * @param where the place that says it: a JSON pointer or {@code file:line}
 * @param number the number as it stands there
 */
public record StatedReel(String where, String number) {

    public StatedReel {
        if (where.isBlank() || number.isBlank()) {
            throw new IllegalArgumentException("a stated reel needs a place and a number");
        }
    }
}
