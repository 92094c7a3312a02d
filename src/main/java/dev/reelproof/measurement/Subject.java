package dev.reelproof.measurement;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What a value belongs to: the reel, a conductor, a pair or a combination of pairs, an end, a sample.
 *
 * @param pair the measured (disturbed) pair, from 1; null for the reel
 * @param partner the disturbing pair, from 1; null unless a combination
 * @param conductor the conductor; null unless one conductor
 * @param end the end; null where the property has none
 * @param sample the sample, from 1; null unless sampled more than once
 */
public record Subject(
        @Nullable Integer pair,
        @Nullable Integer partner,
        @Nullable Conductor conductor,
        @Nullable End end,
        @Nullable Integer sample)
        implements Comparable<Subject> {
    private static final int MORE_THAN_ALL_PAIRS = 5003;

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

    private static void requirePositive(String name, @Nullable Integer number) {
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

    public Subject at(@Nullable End newEnd) {
        return new Subject(pair, partner, conductor, newEnd, sample);
    }

    public Subject withSample(@Nullable Integer newSample) {
        return new Subject(pair, partner, conductor, end, newSample);
    }

    /**
     * The pair of a subject that is not of the whole reel.
     *
     * @throws IllegalStateException when it is
     */
    public int pairNumber() {
        if (pair == null) {
            throw new IllegalStateException("the reel has no pair of its own");
        }
        return pair;
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
        int order = nullFirst(pair, other.pair);
        if (order == 0) {
            order = nullFirst(partner, other.partner);
        }
        if (order == 0) {
            order = nullFirst(conductor, other.conductor);
        }
        if (order == 0) {
            order = nullFirst(end, other.end);
        }
        return order == 0 ? nullFirst(sample, other.sample) : order;
    }

    private static <T extends Comparable<T>> int nullFirst(@Nullable T one, @Nullable T other) {
        if (one == null || other == null) {
            return Boolean.compare(one != null, other != null);
        }
        return one.compareTo(other);
    }

    /** Spreads the combinations of a large core, of which the hash code of a record gives dozens the same number: sets would be slow. */
    @Override
    public int hashCode() {
        int pairs = Objects.hashCode(pair) * MORE_THAN_ALL_PAIRS + Objects.hashCode(partner);
        return Objects.hash(pairs, conductor, end, sample);
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
