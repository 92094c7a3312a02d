package dev.reelproof.network;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import org.jspecify.annotations.Nullable;

/**
 * What a port of a network file is connected to: a conductor, or both conductors of a pair at once, as through a balun.
 *
 * @param number the port's number in the file, from 1
 * @param end the end of the cable
 * @param pair the pair, from 1
 * @param mode what the port carries
 * @param conductor the conductor of the pair; null unless the port carries one alone
 * @param referenceOhm the reference impedance of a mode in ohm, where the upload states it; null when the file does
 */
public record Port(
        int number, End end, int pair, PortMode mode, @Nullable Conductor conductor, @Nullable Double referenceOhm) {

    public Port {
        if (!(number >= 1 && pair >= 1)) {
            throw new IllegalArgumentException("ports and pairs count from 1, not port " + number + " of pair " + pair);
        }
        if (end == null || mode == null) {
            throw new IllegalArgumentException("port " + number + " is connected at an end, in a mode");
        }
        if (mode == PortMode.SINGLE && conductor == null) {
            throw new IllegalArgumentException("port " + number + " is connected to a conductor at an end");
        }
        if (mode != PortMode.SINGLE && conductor != null) {
            throw new IllegalArgumentException(
                    "port " + number + " is a " + mode.word()
                            + " port with a conductor; it is connected to both conductors of the pair, so leave 'conductor' out");
        }
        if (mode == PortMode.SINGLE && referenceOhm != null) {
            throw new IllegalArgumentException(
                    "port " + number
                            + " is a single port with a reference; the file states that of a conductor, so leave 'reference' out");
        }
        if (referenceOhm != null && !(referenceOhm > 0 && Double.isFinite(referenceOhm))) {
            throw new IllegalArgumentException("the reference impedance of port " + number
                    + " must be positive and finite, not " + referenceOhm + " ohm");
        }
    }

    /** A port at one conductor. */
    public Port(int number, End end, int pair, Conductor conductor) {
        this(number, end, pair, PortMode.SINGLE, conductor, null);
    }

    /** A port at both conductors, whose reference the file states. */
    public static Port ofMode(int number, End end, int pair, PortMode mode) {
        return new Port(number, end, pair, mode, null, null);
    }

    /** In words: "near end, pair 1, conductor a". */
    String place() {
        return end.word() + " end, pair " + pair + ", "
                + (conductor == null ? mode.word() + " mode" : "conductor " + conductor.letter());
    }
}
