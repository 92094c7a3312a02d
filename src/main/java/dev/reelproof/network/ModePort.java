package dev.reelproof.network;

import dev.reelproof.measurement.End;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A pair at one end: where a differential and a common mode enter, and which rows of the file's matrix they are made of.
 *
 * @param end the end
 * @param pair the pair, from 1
 * @param a the row of conductor a, from 1; null where the file has modes
 * @param b the row of conductor b; null where the file has modes
 * @param differential the row of the differential mode; null where the file has conductors, or lacks it
 * @param common the row of the common mode, likewise
 * @param reversed whether the file's differential mode is b − a
 */
record ModePort(
        End end,
        int pair,
        @Nullable Integer a,
        @Nullable Integer b,
        @Nullable Integer differential,
        @Nullable Integer common,
        boolean reversed) {

    static ModePort ofConductors(End end, int pair, int a, int b) {
        return new ModePort(end, pair, a, b, null, null, false);
    }

    static ModePort ofModes(End end, int pair, @Nullable Integer differential, @Nullable Integer common) {
        return new ModePort(end, pair, null, null, differential, common, false);
    }

    /** Whether the file has the conductors, of which both modes are formed. */
    boolean isOfConductors() {
        return a != null && b != null;
    }

    boolean hasDifferential() {
        return differential != null || isOfConductors();
    }

    boolean hasCommon() {
        return common != null || isOfConductors();
    }

    /** The rows of the differential mode: a and b, or that of the mode itself. */
    List<Integer> differentialRows() {
        return rows(differential);
    }

    /** The rows of the common mode. */
    List<Integer> commonRows() {
        return rows(common);
    }

    private List<Integer> rows(@Nullable Integer mode) {
        if (mode != null) {
            return List.of(mode);
        }
        return a != null && b != null ? List.of(a, b) : List.of();
    }

    /** In words: "ports 1, 2 (near end, pair 1, conductors a, b)". */
    String words() {
        String place = " (" + end.word() + " end, pair " + pair + ", ";
        if (isOfConductors()) {
            return "ports " + a + ", " + b + place + "conductors a, b)";
        }
        if (differential != null && common != null) {
            return "ports " + differential + ", " + common + place + "differential and common mode)";
        }
        return differential != null
                ? "port " + differential + place + "differential mode)"
                : "port " + common + place + "common mode)";
    }
}
