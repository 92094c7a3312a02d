package dev.reelproof.judgement;

/**
 * A run of neighbouring points of a series. Uncertainty is worked out block by block, and only where a value lies so near its limit that it
 * matters.
 *
 * @param from the first point
 * @param to behind the last point
 */
record Block(int from, int to) {
    /** Points in a block: few enough that they are alike, enough that what is worked out once a block costs little. */
    private static final int POINTS = 32;

    /** The number of the block that holds a point. */
    static int numberOf(int index) {
        return index / POINTS;
    }

    /** How many blocks a series of so many points has. */
    static int count(int size) {
        return (size + POINTS - 1) / POINTS;
    }

    /** The block of a number in a series of so many points. */
    static Block of(int number, int size) {
        return new Block(number * POINTS, Math.min(size, (number + 1) * POINTS));
    }

    int size() {
        return to - from;
    }
}
