package dev.reelproof.network;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;

/**
 * What a port of a network file is connected to.
 *
 * @param number the port's number in the file, from 1
 * @param end the end of the cable
 * @param pair the pair, from 1
 * @param conductor the conductor of the pair
 */
public record Port(int number, End end, int pair, Conductor conductor) {

    public Port {
        if (!(number >= 1 && pair >= 1)) {
            throw new IllegalArgumentException("ports and pairs count from 1, not port " + number + " of pair " + pair);
        }
        if (end == null || conductor == null) {
            throw new IllegalArgumentException("port " + number + " is connected to a conductor at an end");
        }
    }

    /** In words: "near end, pair 1, conductor a". */
    String place() {
        return end.word() + " end, pair " + pair + ", conductor " + conductor.letter();
    }
}
