package dev.reelproof.store;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Set;
import java.util.stream.Stream;

/** Tells a database that cannot be asked from one that refused what it was asked. */
public final class DatabaseUnavailable {
    /**
     * Classes and codes of PostgreSQL's appendix A, "PostgreSQL Error Codes": no connection, out of space, memory or connections, and a
     * server that was shut down, crashed, or is starting.
     */
    private static final Set<String> CLASSES = Set.of("08", "53");

    private static final Set<String> CODES = Set.of("57P01", "57P02", "57P03", "58030");

    private static final int LETTERS_OF_CLASS = 2;
    private static final int MOST_CAUSES = 50;

    private DatabaseUnavailable() {}

    /** Whether a failure, or what caused it, is that the database could not be asked. */
    public static boolean isCauseOf(Throwable failure) {
        return Stream.iterate(failure, cause -> cause != null, Throwable::getCause)
                .limit(MOST_CAUSES)
                .anyMatch(cause -> cause instanceof SQLTransientConnectionException
                        || cause instanceof SQLException sql && isOfUnavailability(sql));
    }

    private static boolean isOfUnavailability(SQLException failure) {
        String state = failure.getSQLState();
        // The pool says that no connection was free in time, and without a code.
        if (state == null) {
            return failure.getMessage() != null && failure.getMessage().contains("Acquisition timeout");
        }
        return CODES.contains(state)
                || state.length() > LETTERS_OF_CLASS && CLASSES.contains(state.substring(0, LETTERS_OF_CLASS));
    }
}
