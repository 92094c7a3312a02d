package dev.reelproof.judgement;

import dev.reelproof.measurement.Subject;
import java.util.Comparator;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * One value that is judged.
 *
 * @param series the series that it stands in
 * @param index its place there
 * @param limitAt the frequency that the limit is taken at, MHz; 0 where the limit has none
 * @param guardBand w, in the unit of the value; 0 until it is known, and for simple acceptance
 */
record Candidate(Series series, int index, double limitAt, double guardBand) {
    /** The lowest frequency first, then the lowest pair. */
    static final Comparator<Candidate> LOWEST_FIRST = Comparator.comparingDouble(Candidate::frequencyOrZero)
            .thenComparing(candidate -> candidate.series.subject());

    Candidate guardedBy(double width) {
        return new Candidate(series, index, limitAt, width);
    }

    /** Its frequency, MHz; absent for a single value. */
    @Nullable
    Double megahertz() {
        return series.grid() == null ? null : (Double) series.grid().megahertz(index);
    }

    private double frequencyOrZero() {
        return series.grid() == null ? 0 : series.grid().megahertz(index);
    }

    double value() {
        return series.corrected(index);
    }

    /**
     * What the value depends on.
     *
     * @throws dev.reelproof.correction.OutsideLawException when a law has no derivative there
     */
    Influence influence() {
        return series.influence(index);
    }

    String words() {
        return value() + " (" + series.subject().words() + ")";
    }

    /** The pairs that the value belongs to: none for the reel, two for a combination. */
    TreeSet<Integer> pairs() {
        TreeSet<Integer> pairs = new TreeSet<>();
        Subject subject = series.subject();
        if (subject.pair() != null) {
            pairs.add(subject.pair());
        }
        if (subject.partner() != null) {
            pairs.add(subject.partner());
        }
        return pairs;
    }
}
