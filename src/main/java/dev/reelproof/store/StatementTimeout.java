package dev.reelproof.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.QueryTimeoutException;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.function.Supplier;
import org.hibernate.Session;

/** Bounds how long the database may take for a search, and nothing that follows it in the transaction. */
@ApplicationScoped
public class StatementTimeout {
    private final Session session;

    StatementTimeout(Session session) {
        this.session = session;
    }

    /**
     * What a search finds.
     *
     * @param longest how long each of its statements may take
     * @param tooLong the sentence for the person who asked, when one takes longer
     * @throws SearchTooLargeException when one takes longer
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public <T> T within(Duration longest, String tooLong, Supplier<T> search) {
        String before = session.createNativeQuery("select current_setting('statement_timeout')", String.class)
                .getSingleResult();
        limit(Long.toString(longest.toMillis()));
        try {
            T found = search.get();
            limit(before);
            return found;
        } catch (QueryTimeoutException e) {
            throw new SearchTooLargeException(tooLong);
        }
    }

    private void limit(String most) {
        session.createNativeQuery("select set_config('statement_timeout', :most, true)", String.class)
                .setParameter("most", most)
                .getSingleResult();
    }
}
