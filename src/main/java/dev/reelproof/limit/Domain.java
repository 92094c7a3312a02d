package dev.reelproof.limit;

/** Where along frequency a requirement is judged. */
public sealed interface Domain {

    /** Not measured against frequency. */
    record NoFrequency() implements Domain {}

    /**
     * At one frequency.
     *
     * @param megahertz the frequency, MHz
     */
    record Spot(double megahertz) implements Domain {}

    /**
     * Over a range, both ends included.
     *
     * @param from first frequency, MHz
     * @param to last frequency, MHz
     */
    record Range(double from, double to) implements Domain {}
}
