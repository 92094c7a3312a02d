package dev.reelproof.judgement;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What stands in the way of judging a requirement: the first few, and how many more.
 *
 * @param named the first few
 * @param more how many there are beyond those
 */
public record Obstacles(List<Obstacle> named, int more) {
    public static final Obstacles NONE = new Obstacles(List.of(), 0);

    private static final int MOST_NAMED = 3;

    /** @throws IllegalArgumentException when there are more, but none is named */
    public Obstacles {
        named = List.copyOf(named);
        if (!(more >= 0 && (more == 0 || !named.isEmpty()))) {
            throw new IllegalArgumentException(
                    "obstacles beyond " + named.size() + " named ones must be 0 or more, not " + more);
        }
    }

    static Obstacles of(Obstacle only) {
        return new Obstacles(List.of(only), 0);
    }

    /** What stood in the way of a finding of which the sentence alone is known: that sentence, where it was not tested. */
    public static Obstacles asRecorded(Outcome outcome, @Nullable String reason) {
        return outcome == Outcome.NOT_TESTED && reason != null ? of(Obstacle.asRecorded(reason)) : NONE;
    }

    /** That a record says what a finding came to, and keeps no figure of it. */
    public static Obstacles figureNotKept(Outcome recorded) {
        return of(new Obstacle(Obstacle.Kind.FIGURE_NOT_KEPT, Map.of("outcome", recorded.word())));
    }

    /** Whether the figure was not kept, and nothing else stands in the way. */
    boolean isFigureNotKept() {
        return !isEmpty() && named.stream().allMatch(one -> one.kind() == Obstacle.Kind.FIGURE_NOT_KEPT);
    }

    /** All of them, of which the first few are named. */
    static Obstacles of(List<Obstacle> all) {
        int named = Math.min(MOST_NAMED, all.size());
        return new Obstacles(all.subList(0, named), all.size() - named);
    }

    public boolean isEmpty() {
        return named.isEmpty();
    }

    /** The sentence that a record keeps. */
    public String sentence() {
        String shown = named.stream().map(Obstacle::sentence).collect(Collectors.joining("; "));
        return more > 0 ? shown + "; and " + more + " more" : shown;
    }
}
