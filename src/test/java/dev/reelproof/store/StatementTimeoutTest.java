package dev.reelproof.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.TestTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.hibernate.Session;
import org.junit.jupiter.api.Test;

@QuarkusTest
class StatementTimeoutTest {
    private static final Duration SHORT = Duration.ofMillis(200);
    private static final String TOO_LONG = "ask for less";

    @Inject
    StatementTimeout timeout;

    @Inject
    Session session;

    private String limit() {
        return session.createNativeQuery("select current_setting('statement_timeout')", String.class)
                .getSingleResult();
    }

    @Test
    @TestTransaction
    void boundsASearchAndNothingThatFollows() {
        String before = limit();
        assertEquals("200ms", timeout.within(SHORT, TOO_LONG, this::limit));
        assertEquals(before, limit());
    }

    @Test
    @TestTransaction
    void endsASearchThatTakesTooLong() {
        assertEquals(
                TOO_LONG,
                assertThrows(
                                SearchTooLargeException.class,
                                () -> timeout.within(SHORT, TOO_LONG, () -> session.createNativeQuery(
                                                "select cast(pg_sleep(10) as text)", String.class)
                                        .getSingleResult()))
                        .getMessage());
    }

    @Test
    @TestTransaction
    void endsASearchWhoseNextRowsTakeTooLong() {
        AtomicInteger read = new AtomicInteger();
        assertThrows(
                SearchTooLargeException.class,
                () -> timeout.within(SHORT, TOO_LONG, () -> {
                    try (Stream<Integer> rows = session.createNativeQuery(
                                    """
                                    select n from generate_series(1, 100) n
                                    cross join lateral pg_sleep(case when n > 20 then 10 else 0 * n end)""",
                                    Integer.class)
                            .setFetchSize(5)
                            .getResultStream()) {
                        rows.forEach(row -> read.incrementAndGet());
                    }
                    return null;
                }));
        assertTrue(read.get() >= 5, "read " + read);
    }
}
