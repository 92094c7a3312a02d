package dev.reelproof.analysis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The first candidates and the first ones of the test, each compared with each that it shares reels with: each is tested again with the
 * other held fixed. Where nothing significant is left of either, they cannot be told apart; where something is left of only one, it
 * explains the other.
 */
final class Comparisons {
    /** How many of the first candidates are compared with each other. */
    static final int COMPARED = 20;

    /** How many of the first candidates of the test are compared besides. */
    static final int COMPARED_OF_THE_TEST = 5;

    private final Weighing weighing;
    private final double level;
    private final List<Candidate> first;
    private final Map<Candidate, List<Candidate>> explaining = new HashMap<>();
    private final Map<Candidate, List<Candidate>> explained = new HashMap<>();
    private final Map<Candidate, List<Candidate>> alike = new HashMap<>();

    Comparisons(List<Candidate> bestFirst, Weighing weighing, double level) {
        this.weighing = weighing;
        this.level = level;
        this.first = Stream.concat(
                        bestFirst.stream().limit(COMPARED),
                        bestFirst.stream()
                                .skip(COMPARED)
                                .filter(Candidate::isOfTest)
                                .limit(COMPARED_OF_THE_TEST))
                .filter(candidate -> candidate.isTested() && candidate.decisive() <= level)
                .toList();
        for (int i = 0; i < first.size(); i++) {
            for (int j = i + 1; j < first.size(); j++) {
                compare(first.get(i), first.get(j));
            }
        }
    }

    private void compare(Candidate one, Candidate other) {
        if (!one.exposed().intersects(other.exposed())) {
            return;
        }
        boolean oneIsLeft = isLeft(one, other);
        boolean otherIsLeft = isLeft(other, one);
        if (!oneIsLeft && !otherIsLeft) {
            note(alike, one, other);
            note(alike, other, one);
        } else if (!oneIsLeft) {
            note(explaining, one, other);
            note(explained, other, one);
        } else if (!otherIsLeft) {
            note(explaining, other, one);
            note(explained, one, other);
        }
    }

    /** Whether something is left of a candidate with another held fixed. */
    private boolean isLeft(Candidate candidate, Candidate fixed) {
        return weighing.withFixed(candidate.exposed(), fixed.exposed()) <= level;
    }

    private static void note(Map<Candidate, List<Candidate>> notes, Candidate of, Candidate noted) {
        notes.computeIfAbsent(of, candidate -> new ArrayList<>()).add(noted);
    }

    /** What explains a candidate, best evidence first. */
    List<Candidate> explaining(Candidate candidate) {
        return ordered(explaining, candidate);
    }

    /** What a candidate explains, best evidence first. */
    List<Candidate> explainedBy(Candidate candidate) {
        return ordered(explained, candidate);
    }

    /** What a candidate cannot be told from, best evidence first. */
    List<Candidate> alike(Candidate candidate) {
        return ordered(alike, candidate);
    }

    private List<Candidate> ordered(Map<Candidate, List<Candidate>> notes, Candidate candidate) {
        return notes.getOrDefault(candidate, List.of()).stream()
                .sorted(Comparator.comparingInt(first::indexOf))
                .toList();
    }

    /** The names of candidates. */
    static List<Exposure> names(List<Candidate> candidates) {
        return candidates.stream().map(Candidate::first).toList();
    }
}
