package dev.reelproof.judgement;

import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What the values of a requirement come to, whatever stands in the way of a full judgement.
 *
 * @param figure the worst figure; absent when there was no value to judge
 * @param outcome what it came to by the decision rule; absent when nothing could be decided
 * @param points how many values were judged
 * @param obstacles what could not be judged, and why
 * @param failingPairs for each failing value the pairs it belongs to; empty for a statistic
 */
record Evaluation(
        @Nullable Figure figure,
        @Nullable Outcome outcome,
        int points,
        List<Obstacle> obstacles,
        List<TreeSet<Integer>> failingPairs) {

    Evaluation {
        if (outcome != null && figure == null) {
            throw new IllegalArgumentException("without a figure there is no outcome, such as " + outcome.word());
        }
        obstacles = List.copyOf(obstacles);
        failingPairs = List.copyOf(failingPairs);
    }

    /** What it came to, where nothing stood in the way. */
    Outcome decided() {
        return Objects.requireNonNull(outcome, "nothing was decided, so that something stands in the way");
    }

    boolean fails() {
        return outcome != null && outcome.rejects();
    }
}
