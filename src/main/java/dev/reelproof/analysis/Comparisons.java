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
 * explains the other. What is left must be so by the measure that names a suspect, corrected for all that were tested: the first
 * candidates are chosen from all for being extreme, and one in twenty would seem left by chance.
 */
final class Comparisons {
    /** How many of the first candidates are compared with each other. */
    static final int COMPARED = 20;

    /** How many of the first candidates of the test are compared besides. */
    static final int COMPARED_OF_THE_TEST = 5;

    private final Weighing weighing;
    private final double level;
    private final int tested;
    private final List<Candidate> first;
    private final Map<Candidate, List<Candidate>> explaining = new HashMap<>();
    private final Map<Candidate, List<Candidate>> explained = new HashMap<>();
    private final Map<Candidate, List<Candidate>> alike = new HashMap<>();

    Comparisons(List<Candidate> bestFirst, Weighing weighing, double level, int tested) {
        this.weighing = weighing;
        this.level = level;
        this.tested = tested;
        this.first = Stream.concat(
                        bestFirst.stream().limit(COMPARED),
                        bestFirst.stream()
                                .skip(COMPARED)
                                .filter(Candidate::isOfTest)
                                .limit(COMPARED_OF_THE_TEST))
                .filter(candidate -> candidate.isTested() && candidate.decisive() <= level)
                .toList();
        List<Map<Candidate, Boolean>> left =
                first.stream().map(this::leftWithFixed).toList();
        for (int i = 0; i < first.size(); i++) {
            for (int j = i + 1; j < first.size(); j++) {
                Candidate one = first.get(i);
                Candidate other = first.get(j);
                Boolean oneIsLeft = left.get(j).get(one);
                Boolean otherIsLeft = left.get(i).get(other);
                if (oneIsLeft != null && otherIsLeft != null) {
                    compare(one, oneIsLeft, other, otherIsLeft);
                }
            }
        }
    }

    /** Of each candidate that shares reels with a fixed one, whether something is left of it. */
    private Map<Candidate, Boolean> leftWithFixed(Candidate fixed) {
        List<Candidate> sharing = first.stream()
                .filter(candidate ->
                        !candidate.equals(fixed) && candidate.exposed().intersects(fixed.exposed()))
                .toList();
        double[] adjusted = FalseDiscovery.adjusted(
                sharing.stream()
                        .mapToDouble(candidate -> weighing.withFixed(candidate.exposed(), fixed.exposed()))
                        .toArray(),
                tested);
        Map<Candidate, Boolean> left = new HashMap<>();
        for (int i = 0; i < adjusted.length; i++) {
            left.put(sharing.get(i), adjusted[i] <= level);
        }
        return left;
    }

    private void compare(Candidate one, boolean oneIsLeft, Candidate other, boolean otherIsLeft) {
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
