package dev.reelproof.measurement;

import java.util.Comparator;

/**
 * What a value belongs to: the reel, a conductor, a pair or a combination of pairs, an end, a sample.
 *
 * @param pair the measured (disturbed) pair, from 1; null for the reel
 * @param partner the disturbing pair, from 1; null unless a combination
 * @param conductor the conductor; null unless one conductor
 * @param end the end; null where the property has none
 * @param sample the sample, from 1; null unless sampled more than once
 */
public record Subject(Integer pair, Integer partner, Conductor conductor, End end, Integer sample)
        implements Comparable<Subject> {
    private static final Comparator<Subject> ORDER = Comparator.comparing(
                    Subject::pair, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(Subject::partner, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(Subject::conductor, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(Subject::end, Comparator.nullsFirst(Comparator.naturalOrder()))
            .thenComparing(Subject::sample, Comparator.nullsFirst(Comparator.naturalOrder()));

    public Subject {
        requirePositive("pair", pair);
        requirePositive("partner", partner);
        requirePositive("sample", sample);
        if (pair == null && (partner != null || conductor != null)) {
            throw new IllegalArgumentException("a partner or a conductor needs a pair");
        }
        if (partner != null && partner.equals(pair)) {
            throw new IllegalArgumentException("pair " + pair + " cannot be its own partner");
        }
        if (partner != null && conductor != null) {
            throw new IllegalArgumentException("a combination of pairs has no single conductor");
        }
    }

    private static void requirePositive(String name, Integer number) {
        if (number != null && !(number > 0)) {
            throw new IllegalArgumentException(name + " must be 1 or more, not " + number);
        }
    }

    public static Subject ofReel() {
        return new Subject(null, null, null, null, null);
    }

    public static Subject ofPair(int pair) {
        return new Subject(pair, null, null, null, null);
    }

    public static Subject ofConductor(int pair, Conductor conductor) {
        return new Subject(pair, null, conductor, null, null);
    }

    public static Subject ofCombination(int pair, int partner) {
        return new Subject(pair, partner, null, null, null);
    }

    public Subject at(End newEnd) {
        return new Subject(pair, partner, conductor, newEnd, sample);
    }

    public Subject withSample(Integer newSample) {
        return new Subject(pair, partner, conductor, end, newSample);
    }

    /** The same combination with the two pairs exchanged. */
    public Subject reversed() {
        return new Subject(partner, pair, conductor, end, sample);
    }

    /** The form of this subject; a combination counts as ordered where the property is. */
    public Site site(Property property) {
        if (pair == null) {
            return Site.REEL;
        }
        if (partner != null) {
            return property.sites().contains(Site.ORDERED_COMBINATION) ? Site.ORDERED_COMBINATION : Site.COMBINATION;
        }
        return conductor == null ? Site.PAIR : Site.CONDUCTOR;
    }

    @Override
    public int compareTo(Subject other) {
        return ORDER.compare(this, other);
    }

    /** In words: "pair 1 from pair 2, near end". */
    public String words() {
        StringBuilder words = new StringBuilder();
        if (pair == null) {
            words.append("reel");
        } else {
            words.append("pair ").append(pair);
        }
        if (partner != null) {
            words.append(" and pair ").append(partner);
        }
        if (conductor != null) {
            words.append(", conductor ").append(conductor.letter());
        }
        if (end != null) {
            words.append(", ").append(end.word()).append(" end");
        }
        if (sample != null) {
            words.append(", sample ").append(sample);
        }
        return words.toString();
    }
}
