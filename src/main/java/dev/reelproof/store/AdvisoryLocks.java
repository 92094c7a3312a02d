package dev.reelproof.store;

import java.util.stream.Stream;
import org.hibernate.Session;

/**
 * Transactions that change the same thing, one after the other.
 *
 * <p>Not by locking rows: that needs the right to change them, which the service does not have on records.
 */
public final class AdvisoryLocks {
    private AdvisoryLocks() {}

    /**
     * Waits until no other transaction has one of these turns, and keeps them until this one ends. They are taken in one order, so
     * that no two transactions wait for each other; two names may share a turn, which costs a wait and no more.
     */
    public static void take(Session session, String... names) {
        session.createNativeQuery(
                        """
                        select count(pg_advisory_xact_lock(turn)) from (
                            select distinct hashtextextended(name, 0) as turn from unnest(cast(:names as text[])) as name
                            order by turn) as turns""",
                        Long.class)
                .setParameter("names", Stream.of(names).toArray(String[]::new))
                .getSingleResult();
    }

    /** As {@link #take} of one turn that others may share who take it so; who takes it alone waits for all of them. */
    public static void share(Session session, String name) {
        session.createNativeQuery("select count(pg_advisory_xact_lock_shared(hashtextextended(:name, 0)))", Long.class)
                .setParameter("name", name)
                .getSingleResult();
    }
}
