package dev.reelproof.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.sql.SQLException;
import java.time.Duration;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.hibernate.Session;

/** Bounds how long the database may take for a search, and nothing that follows it in the transaction. */
@ApplicationScoped
public class StatementTimeout {
    /** PostgreSQL's code for a statement that was cancelled, here for its time. */
    private static final String CANCELLED = "57014";

    private final Session session;

    StatementTimeout(Session session) {
        this.session = session;
    }

    /**
     * What a search finds.
     *
     * @param longest how long each of its statements may take, and each handful of rows of one whose rows are streamed
     * @param tooLong the sentence for the person who asked, when one takes longer
     * @throws SearchTooLargeException when one takes longer
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public <T> T within(Duration longest, String tooLong, Supplier<T> search) {
        String before = limit(Long.toString(longest.toMillis()));
        try {
            T found = search.get();
            limit(before);
            return found;
        } catch (RuntimeException e) {
            if (wasCancelled(e)) {
                throw new SearchTooLargeException(tooLong);
            }
            throw e;
        }
    }

    /** A query says so by one exception when it is run, and by another when its next rows are fetched. */
    private static boolean wasCancelled(RuntimeException failure) {
        return Stream.<Throwable>iterate(failure, cause -> cause != null, Throwable::getCause)
                .anyMatch(cause -> cause instanceof SQLException sql && CANCELLED.equals(sql.getSQLState()));
    }

    /** Sets the limit and gives the one before, in one round trip: a short search takes little longer than that itself. */
    private String limit(String most) {
        return session.createNativeQuery(
                        """
                        with before as materialized (select current_setting('statement_timeout') as most)
                        select before.most from before where set_config('statement_timeout', :most, true) is not null""",
                        String.class)
                .setParameter("most", most)
                .getSingleResult();
    }
}
