package dev.reelproof.api;

import dev.reelproof.intake.IntakeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Reads the parameters of a query; each refusal names the parameter and says what would be right. */
public final class QueryParameters {
    /** The most entries of a list. */
    public static final int MOST_LISTED = 500;

    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 9999;

    private QueryParameters() {}

    /**
     * How many entries a list may have.
     *
     * @throws IntakeException when it is not a whole number from 1 to {@value #MOST_LISTED}
     */
    public static int limit(String asked) {
        return limit(asked, MOST_LISTED);
    }

    /**
     * As {@link #limit(String)}, of a list that may be longer.
     *
     * @throws IntakeException when it is not a whole number from 1 to the most
     */
    public static int limit(String asked, int most) {
        try {
            int limit = Integer.parseInt(asked.strip());
            if (limit >= 1 && limit <= most) {
                return limit;
            }
        } catch (NumberFormatException e) {
            // Said below, as for a number out of range.
        }
        throw refused("limit", "must be a whole number from 1 to " + most + ", not '" + asked + "'");
    }

    /**
     * A whole number that names something, from 1.
     *
     * @throws IntakeException when it is none
     */
    public static long id(String where, String asked) {
        try {
            long id = Long.parseLong(asked.strip());
            if (id >= 1) {
                return id;
            }
        } catch (NumberFormatException e) {
            // Said below, as for a number out of range.
        }
        throw refused(where, "must be a whole number from 1, not '" + asked + "'");
    }

    /**
     * A whole number.
     *
     * @throws IntakeException when it is none
     */
    public static int whole(String where, String asked) {
        try {
            return Integer.parseInt(asked.strip());
        } catch (NumberFormatException e) {
            throw refused(where, "must be a whole number, not '" + asked + "'");
        }
    }

    /**
     * A number.
     *
     * @throws IntakeException when it is none, or not finite
     */
    public static double number(String where, String asked) {
        double number;
        try {
            number = Double.parseDouble(asked);
        } catch (NumberFormatException e) {
            throw refused(where, "must be a number, not '" + asked + "'");
        }
        if (Double.isFinite(number)) {
            return number;
        }
        throw refused(where, "must be a finite number, not " + number);
    }

    /**
     * A text.
     *
     * @throws IntakeException when it holds a control character: the database holds none and refuses to be asked for them
     */
    public static String text(String where, String asked) {
        if (asked.codePoints().anyMatch(Character::isISOControl)) {
            throw refused(where, "holds a control character");
        }
        return asked;
    }

    /**
     * As {@link #text}, where it may be left out.
     *
     * @throws IntakeException as {@link #text}
     */
    public static @Nullable String textIfGiven(String where, @Nullable String asked) {
        return asked == null ? null : text(where, asked);
    }

    /**
     * A time.
     *
     * @throws IntakeException when it is not ISO 8601 with its offset
     */
    public static @Nullable OffsetDateTime time(String where, @Nullable String asked) {
        return asked == null ? null : parsed(where, asked);
    }

    private static OffsetDateTime parsed(String where, String asked) {
        try {
            return OffsetDateTime.parse(asked);
        } catch (DateTimeParseException e) {
            throw refused(
                    where, "'" + asked + "' is not a time in ISO 8601 with its offset, such as 2026-03-02T14:05:00Z");
        }
    }

    /**
     * A time with its offset, or a day of which a time is meant in UTC.
     *
     * @param ofDay the time that is meant of a day
     * @throws IntakeException when it is neither, or its year is not from {@value #FIRST_YEAR} to {@value #LAST_YEAR}
     */
    public static @Nullable OffsetDateTime timeOrDay(String where, @Nullable String asked, LocalTime ofDay) {
        if (asked == null) {
            return null;
        }
        OffsetDateTime time;
        try {
            time = LocalDate.parse(asked).atTime(ofDay).atOffset(ZoneOffset.UTC);
        } catch (DateTimeParseException e) {
            time = parsed(where, asked);
        }
        if (!(time.getYear() >= FIRST_YEAR && time.getYear() <= LAST_YEAR)) {
            throw refused(where, "must be in a year from " + FIRST_YEAR + " to " + LAST_YEAR + ", not " + asked);
        }
        return time;
    }

    /**
     * The time before which something is to be: the time named, or the end of the day named, in UTC.
     *
     * @throws IntakeException as {@link #timeOrDay}
     */
    public static @Nullable OffsetDateTime before(String where, @Nullable String asked) {
        OffsetDateTime time = timeOrDay(where, asked, LocalTime.MIN);
        return time != null && asked != null && isDay(asked) ? time.plusDays(1) : time;
    }

    private static boolean isDay(String asked) {
        try {
            LocalDate.parse(asked);
            return true;
        } catch (DateTimeParseException e) {
            return false;
        }
    }

    /** A refusal of what a parameter says, in the words of the core that refused it. */
    public static IntakeException refused(String where, RuntimeException refusal) {
        return refused(where, Objects.requireNonNullElse(refusal.getMessage(), "cannot be so"));
    }

    /** A refusal of what a parameter says. */
    public static IntakeException refused(String where, String message) {
        return IntakeException.of(IntakeException.Kind.CONTENT, where, message);
    }
}
