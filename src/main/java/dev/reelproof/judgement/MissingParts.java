package dev.reelproof.judgement;

import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.Subject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Names what is missing, shortly: runs of pairs, and pairs all of whose combinations are missing. */
final class MissingParts {
    private static final int NAMED = 3;

    private final List<Subject> expected;
    private final List<Subject> missing;

    /**
     * @param expected all that should be there, of one form
     * @param missing those of them that are not; at least one
     */
    MissingParts(List<Subject> expected, List<Subject> missing) {
        this.expected = expected;
        this.missing = missing;
    }

    /** Such as "pairs 1 to 3", "every combination with pair 3 at the near end", "conductor b of pair 2". */
    String words() {
        Subject first = missing.get(0);
        String end = first.end() == null ? "" : " at the " + first.end().word() + " end";
        if (first.partner() != null) {
            return combinations() + end;
        }
        return (first.conductor() == null ? runs(pairsOf(missing)) : conductors()) + end;
    }

    private String combinations() {
        Map<Integer, Integer> there = combinationsByPair(expected);
        Map<Integer, Integer> absent = combinationsByPair(missing);
        if (absent.equals(there) && missing.size() > 1) {
            return "every combination";
        }
        Set<Integer> whole = new TreeSet<>();
        absent.forEach((pair, count) -> {
            if (count > 1 && count.equals(there.get(pair))) {
                whole.add(pair);
            }
        });
        List<String> words = new ArrayList<>();
        if (!whole.isEmpty()) {
            words.add("every combination with " + runs(whole));
        }
        List<Subject> rest = missing.stream()
                .filter(subject -> !whole.contains(subject.pair()) && !whole.contains(subject.partner()))
                .toList();
        rest.stream().limit(NAMED).map(subject -> subject.at(null).words()).forEach(words::add);
        return joined(words, rest.size() - NAMED);
    }

    private static Map<Integer, Integer> combinationsByPair(List<Subject> subjects) {
        Map<Integer, Integer> counts = new TreeMap<>();
        for (Subject subject : subjects) {
            counts.merge(subject.pair(), 1, Integer::sum);
            counts.merge(subject.partner(), 1, Integer::sum);
        }
        return counts;
    }

    private String conductors() {
        Map<Integer, Set<Conductor>> byPair = new LinkedHashMap<>();
        missing.forEach(subject -> byPair.computeIfAbsent(subject.pair(), pair -> new LinkedHashSet<>())
                .add(conductorOf(subject)));
        Set<Integer> whole = new TreeSet<>();
        byPair.forEach((pair, conductors) -> {
            if (conductors.size() == Conductor.values().length) {
                whole.add(pair);
            }
        });
        List<String> words = new ArrayList<>();
        if (!whole.isEmpty()) {
            words.add(runs(whole));
        }
        List<Subject> rest = missing.stream()
                .filter(subject -> !whole.contains(subject.pair()))
                .toList();
        rest.stream()
                .limit(NAMED)
                .map(subject -> "conductor " + conductorOf(subject).letter() + " of pair " + subject.pair())
                .forEach(words::add);
        return joined(words, rest.size() - NAMED);
    }

    private static Conductor conductorOf(Subject subject) {
        return Objects.requireNonNull(subject.conductor(), "what is missing is of one form: conductors");
    }

    private static Set<Integer> pairsOf(List<Subject> subjects) {
        Set<Integer> pairs = new TreeSet<>();
        subjects.forEach(subject -> pairs.add(subject.pair()));
        return pairs;
    }

    /** Pairs in order, runs of three and more drawn together. */
    private static String runs(Set<Integer> pairs) {
        List<String> runs = new ArrayList<>();
        List<Integer> numbers = List.copyOf(new TreeSet<>(pairs));
        for (int from = 0, to; from < numbers.size(); from = to) {
            to = from + 1;
            while (to < numbers.size() && numbers.get(to) == numbers.get(to - 1) + 1) {
                to++;
            }
            if (to - from < NAMED) {
                numbers.subList(from, to).forEach(pair -> runs.add(String.valueOf(pair)));
            } else {
                runs.add(numbers.get(from) + " to " + numbers.get(to - 1));
            }
        }
        List<String> named = runs.subList(0, Math.min(NAMED, runs.size()));
        return (pairs.size() > 1 ? "pairs " : "pair ") + joined(named, runs.size() - NAMED);
    }

    private static String joined(List<String> words, int more) {
        if (more > 0) {
            return String.join(", ", words) + " and " + more + " more";
        }
        int last = words.size() - 1;
        return last == 0 ? words.get(0) : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }
}
