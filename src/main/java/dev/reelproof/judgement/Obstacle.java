package dev.reelproof.judgement;

import java.util.Collections;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.ResourceBundle;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Something that stands in the way of judging a requirement.
 *
 * @param kind what it is
 * @param parts what the sentence about it names, by the names that the messages use; in the order of their names
 */
public record Obstacle(Kind kind, Map<String, String> parts) {

    /** The bundle with one message a kind; the root one is English, the language of records. */
    public static final String MESSAGES = "dev.reelproof.judgement.Obstacles";

    private static final ResourceBundle RECORDED = ResourceBundle.getBundle(
            MESSAGES,
            Locale.ROOT,
            Obstacle.class.getClassLoader(),
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));

    /** What can stand in the way, in the order in which it is best mended. */
    public enum Kind {
        EQUIPMENT_OUT_OF_CALIBRATION,
        TEMPERATURE_OUTSIDE_WINDOW,
        /** Nothing of the property was measured. */
        NO_DATA,
        /** The property was measured, but nowhere where the limit holds. */
        NO_DATA_WITHIN_LIMIT,
        PAIR_MISSING,
        /** So few pairs were measured that they may stand for all only while their average lies within a band, and it does not. */
        SAMPLE_OUTSIDE_BAND,
        /** The pairs measured may stand for all where all is well, but the figure that they make fails. */
        SAMPLE_FAILS,
        /** A figure over all pairs lacks the resistance of a conductor. */
        CONDUCTOR_MISSING,
        RANGE_NOT_SPANNED,
        SPOT_NOT_MEASURED,
        GRID_TOO_COARSE,
        LENGTH_TOO_SHORT,
        /** Whether the reel is long enough is not known: the loss that tells it was not measured. */
        LENGTH_NOT_KNOWN_ENOUGH,
        TOO_LITTLE_TESTED,
        UNITS_UNKNOWN,
        PARTS_PER_DIFFERENT_LENGTHS,
        PARTS_ON_DIFFERENT_FREQUENCIES,
        CORRECTION_NOT_POSSIBLE,
        NO_UNCERTAINTY,
        NO_STATISTIC,
        /** A record of version 0.1 says that it passed, and keeps no figure that was held against the limit. */
        FIGURE_NOT_KEPT,
        /** One of a record of before obstacles were kept as data: its sentence alone is known. */
        AS_RECORDED;

        /** The word of messages, of stored rows and of the HTTP answers. */
        public String id() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        /**
         * The kind of that word.
         *
         * @throws IllegalArgumentException when there is none
         */
        public static Kind named(String id) {
            return valueOf(id.toUpperCase(Locale.ROOT).replace('-', '_'));
        }
    }

    private static final String SENTENCE = "sentence";

    /** @throws IllegalArgumentException when a part that the message of the kind needs is not there */
    public Obstacle {
        Objects.requireNonNull(kind, "an obstacle has a kind");
        SortedMap<String, String> inOrder = new TreeMap<>(parts);
        parts = Collections.unmodifiableSortedMap(inOrder);
        Message.fill(RECORDED.getString(kind.id()), parts);
    }

    /** What a record of before obstacles were kept as data says. */
    static Obstacle asRecorded(String sentence) {
        return new Obstacle(Kind.AS_RECORDED, Map.of(SENTENCE, sentence));
    }

    /** The sentence that a record keeps; it begins with the kind of obstacle and has no full stop. */
    public String sentence() {
        return Message.fill(RECORDED.getString(kind.id()), parts);
    }
}
