package dev.reelproof.store.search;

import dev.reelproof.search.Question;
import dev.reelproof.search.SearchKeys;
import dev.reelproof.search.Searched;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import org.hibernate.Session;
import org.hibernate.query.NativeQuery;
import org.jspecify.annotations.Nullable;

/** The names that a search looks through, each under its keys. */
@ApplicationScoped
public class SearchIndex {
    /**
     * Finds names by their keys: of each kind those whose key is the question's, whole names first, then those that begin so, from the
     * end of the index, where the newest numbers stand. So neither the many keys that begin so nor the size of the table costs anything.
     */
    private static final String FIND =
            """
            select w.what, f.name, f.at
            from unnest(cast(:whats as text[])) as w(what)
            cross join lateral (
                (select name, at from search_key
                 where plant = :plant and what = w.what and key = :key
                   and at >= cast(:from as timestamptz) and at < cast(:to as timestamptz)
                 order by whole desc, name desc limit :limit)
                union all
                (select name, at from search_key
                 where plant = :plant and what = w.what and key > :key and key < :behind
                   and at >= cast(:from as timestamptz) and at < cast(:to as timestamptz)
                 order by key desc, whole desc, name desc limit :limit)) f""";

    /**
     * As {@link #FIND}, for a few weeks: whichever is less, what is of these weeks or what has such keys, is looked through. Numbers rise
     * with time, so that from the end of the keys it would be far to a week of long ago.
     */
    private static final String FIND_WITHIN =
            """
            with inside as materialized (
                select what, key, whole, name, at from search_key
                where plant = :plant and what = any(:whats) and key >= :key and key < :behind
                  and at >= cast(:from as timestamptz) and at < cast(:to as timestamptz))
            select w.what, f.name, f.at
            from unnest(cast(:whats as text[])) as w(what)
            cross join lateral (
                (select name, at from inside where what = w.what and key = :key
                 order by whole desc, name desc limit :limit)
                union all
                (select name, at from inside where what = w.what and key > :key
                 order by key desc, whole desc, name desc limit :limit)) f""";

    private static final Duration FEW_WEEKS = Duration.ofDays(31);

    private static final String NEWEST =
            """
            select w.what, f.name, f.at
            from unnest(cast(:whats as text[])) as w(what)
            cross join lateral (
                select name, at from search_key
                where plant = :plant and what = w.what and whole
                  and at >= cast(:from as timestamptz) and at < cast(:to as timestamptz)
                order by at desc, name limit :limit) f""";

    private static final Instant LONG_AGO = Instant.parse("0001-01-01T00:00:00Z");
    private static final Instant FAR_OFF = Instant.parse("9999-12-31T00:00:00Z");

    private final Session session;

    SearchIndex(Session session) {
        this.session = session;
    }

    /**
     * A name that was found.
     *
     * @param what the kind, in its word
     * @param at when a reel was registered or a certificate issued; of others when they were first named
     */
    public record Found(String what, String name, Instant at) {
        /** The kind. */
        public Searched kind() {
            return Searched.named(what).orElseThrow();
        }

        /** The time with its offset. */
        public OffsetDateTime time() {
            return UtcTimes.utc(at);
        }
    }

    /** Has a name found from now on; nothing changes when it is already. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void put(String plant, Searched what, @Nullable String name, Instant at) {
        if (name == null) {
            return;
        }
        session.createNativeMutationQuery(
                        """
                        insert into search_key (plant, what, key, whole, name, at)
                        select :plant, :what, k.key, k.place = 1, :name, cast(:at as timestamptz)
                        from unnest(cast(:keys as text[])) with ordinality as k(key, place)
                        where not exists (select from search_key s
                                          where s.plant = :plant and s.what = :what and s.key = k.key
                                            and s.whole = (k.place = 1) and s.name = :name)
                        on conflict do nothing""")
                .setParameter("plant", plant)
                .setParameter("what", what.word())
                .setParameter("name", name)
                .setParameter("at", at)
                .setParameter("keys", SearchKeys.of(name).toArray(String[]::new))
                .executeUpdate();
    }

    /**
     * Names that answer a question, in no order; the newest when nothing in particular is asked.
     *
     * @param from only what is of this time or later; of any time when null
     * @param before only what is of an earlier time than this; of any time when null
     * @param limit how many of each kind with exactly the question's key, and how many whose key begins so
     */
    @Transactional
    public List<Found> find(
            String plant,
            Collection<Searched> kinds,
            Question question,
            @Nullable OffsetDateTime from,
            @Nullable OffsetDateTime before,
            int limit) {
        Instant begin = from == null ? LONG_AGO : from.toInstant();
        Instant end = before == null ? FAR_OFF : before.toInstant();
        boolean isShort = Duration.between(begin, end).compareTo(FEW_WEEKS) <= 0;
        String find = isShort ? FIND_WITHIN : FIND;
        NativeQuery<Found> query = session.createNativeQuery(question.isEmpty() ? NEWEST : find, Found.class)
                .setParameter("plant", plant)
                .setParameter("whats", kinds.stream().map(Searched::word).toArray(String[]::new))
                .setParameter("from", begin)
                .setParameter("to", end)
                .setParameter("limit", limit);
        if (!question.isEmpty()) {
            query.setParameter("key", question.key()).setParameter("behind", question.behind());
        }
        return query.getResultList();
    }
}
