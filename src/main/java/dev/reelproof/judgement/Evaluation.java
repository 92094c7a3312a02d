package dev.reelproof.judgement;

import java.util.List;
import java.util.Objects;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What the values of a requirement come to, whatever stands in the way of a full judgement.
 *
 * @param figure the worst figure; absent when there was no value to judge
 * @param outcome what it came to by the decision rule; absent when nothing could be decided
 * @param points how many values were judged
 * @param obstacles what could not be judged, and why
 * @param failing how many values fail; 0 for a statistic
 * @param failingPairs the pairs that a failing value belongs to; none for a statistic
 * @param doubt where it is least sure that the limit is met; absent where no uncertainty is known
 */
record Evaluation(
        @Nullable Figure figure,
        @Nullable Outcome outcome,
        int points,
        List<Obstacle> obstacles,
        int failing,
        SortedSet<Integer> failingPairs,
        @Nullable Doubt doubt) {

    Evaluation {
        if (outcome != null && figure == null) {
            throw new IllegalArgumentException("without a figure there is no outcome, such as " + outcome.word());
        }
        obstacles = List.copyOf(obstacles);
    }

    /** What comes of no value at all. */
    static Evaluation ofNothing(List<Obstacle> obstacles) {
        return new Evaluation(null, null, 0, obstacles, 0, new TreeSet<>(), null);
    }

    /** What it came to, where nothing stood in the way. */
    Outcome decided() {
        return Objects.requireNonNull(outcome, "nothing was decided, so that something stands in the way");
    }

    boolean fails() {
        return outcome != null && outcome.rejects();
    }
}
