package dev.reelproof.store.result;

import dev.reelproof.judgement.Verdict;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** What records came to and by which limits, without their findings. */
@ApplicationScoped
public class RecordSummaries {
    private final Session session;

    RecordSummaries(Session session) {
        this.session = session;
    }

    /** The code of the product that a record was judged as; empty when the plant has no record of that id. */
    @Transactional
    public Optional<String> productOf(String plant, UUID id) {
        return RecordIds.received(id).flatMap(received -> session.createNativeQuery(
                        "select product from test_record where plant = :plant and id = :id and received = :received",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .setParameter("received", received)
                .uniqueResultOptional());
    }

    /**
     * What the newest record of a reel came to, without its findings.
     *
     * @param id the record
     * @param attempt which test of the reel it is
     * @param verdict what it came to
     * @param finished when the test ended
     */
    public record Newest(UUID id, int attempt, Verdict verdict, OffsetDateTime finished) {}

    private record NewestRow(String reel, UUID id, int attempt, String verdict, Instant finished) {
        Newest toNewest() {
            return new Newest(id, attempt, Verdict.valueOf(verdict.toUpperCase(Locale.ROOT)), UtcTimes.utc(finished));
        }
    }

    /** What the newest record of a reel came to; empty when it was never tested. The same record as {@link Records#newestOf}. */
    @Transactional
    public Optional<Newest> newestVerdict(String plant, String reel) {
        return Optional.ofNullable(newestVerdicts(plant, List.of(reel)).get(reel));
    }

    /** What the newest record of each of these reels came to, by reel, without those that were never tested. */
    @Transactional
    public Map<String, Newest> newestVerdicts(String plant, Collection<String> reels) {
        return session
                .createNativeQuery(
                        """
                        select u.reel, t.id, t.attempt, t.verdict, t.finished
                        from upload u
                        left join lateral (select record_id, received from judged_again
                                           where plant = u.plant and of_record = u.record_id
                                           order by received desc limit 1) a on true
                        join test_record t on t.plant = u.plant and t.id = coalesce(a.record_id, u.record_id)
                                          and t.received = coalesce(a.received, u.received)
                        where u.plant = :plant and u.reel = any(:reels)
                          and not exists (select from upload later where later.plant = u.plant and later.reel = u.reel
                                          and (later.tested, later.attempt) > (u.tested, u.attempt))""",
                        NewestRow.class)
                .setParameter("plant", plant)
                .setParameter("reels", reels.toArray(String[]::new))
                .getResultList()
                .stream()
                .collect(Collectors.toMap(NewestRow::reel, NewestRow::toNewest));
    }

    /**
     * The revision of a limit set that a record was judged by.
     *
     * @param limitSet the set
     * @param revision its revision
     */
    public record JudgedBy(String limitSet, int revision) {}

    /** The revision of a limit set that a record was judged by; empty when the plant has no record of that id. */
    @Transactional
    public Optional<JudgedBy> judgedBy(String plant, UUID id) {
        return RecordIds.received(id).flatMap(received -> session.createNativeQuery(
                        """
                        select limit_set, limit_set_revision from test_record
                        where plant = :plant and id = :id and received = :received""",
                        JudgedBy.class)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .setParameter("received", received)
                .uniqueResultOptional());
    }
}
