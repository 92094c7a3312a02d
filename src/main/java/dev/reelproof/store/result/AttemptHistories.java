package dev.reelproof.store.result;

import dev.reelproof.judgement.Verdict;
import dev.reelproof.record.Attempt;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.RetestAcceptance;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.seal.Sealing;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** All tests of each reel, with who accepted which retest. */
@ApplicationScoped
public class AttemptHistories {
    private final Session session;
    private final Sealing sealing;

    AttemptHistories(Session session, Sealing sealing) {
        this.session = session;
        this.sealing = sealing;
    }

    private record Row(
            String reel,
            UUID record,
            int attempt,
            Instant tested,
            Instant received,
            String verdict,
            @Nullable String acceptedBy,
            @Nullable Instant accepted,
            @Nullable String reason) {
        Attempt toAttempt(List<Attempt.JudgedAgain> again) {
            return new Attempt(
                    record,
                    attempt,
                    UtcTimes.utc(tested),
                    UtcTimes.utc(received),
                    Verdict.valueOf(verdict.toUpperCase(Locale.ROOT)),
                    acceptedBy == null || accepted == null || reason == null
                            ? null
                            : new RetestAcceptance(acceptedBy, UtcTimes.utc(accepted), reason),
                    again);
        }
    }

    private record AgainRow(UUID ofRecord, UUID record, String verdict) {
        Attempt.JudgedAgain toJudgedAgain() {
            return new Attempt.JudgedAgain(record, Verdict.valueOf(verdict.toUpperCase(Locale.ROOT)));
        }
    }

    /** The tests of a reel; none when it was never tested. */
    @Transactional
    public AttemptHistory of(String plant, String reel) {
        return of(plant, List.of(reel)).getOrDefault(reel, AttemptHistory.none());
    }

    /** The tests of each of these reels that was tested. */
    @Transactional
    public Map<String, AttemptHistory> of(String plant, Collection<String> reels) {
        Map<UUID, List<Attempt.JudgedAgain>> again = judgedAgain(plant, reels);
        Map<String, List<Attempt>> attempts = new HashMap<>();
        session.createNativeQuery(
                        """
                        select u.reel, u.record_id, u.attempt, u.tested, u.received, t.verdict, a.accepted_by, a.at, a.reason
                        from upload u
                        join test_record t on t.plant = u.plant and t.id = u.record_id and t.received = u.received
                        left join lateral (select accepted_by, at, reason from retest_acceptance
                                           where plant = u.plant and record_id = u.record_id
                                           order by id desc limit 1) a on true
                        where u.plant = :plant and u.reel = any(:reels)""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("reels", reels.toArray(String[]::new))
                .getResultList()
                .forEach(row -> attempts.computeIfAbsent(row.reel(), reel -> new ArrayList<>())
                        .add(row.toAttempt(again.getOrDefault(row.record(), List.of()))));
        return attempts.entrySet().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, entry -> new AttemptHistory(entry.getValue())));
    }

    private Map<UUID, List<Attempt.JudgedAgain>> judgedAgain(String plant, Collection<String> reels) {
        return session
                .createNativeQuery(
                        """
                        select j.of_record, j.record_id, t.verdict
                        from judged_again j
                        join test_record t on t.plant = j.plant and t.id = j.record_id and t.received = j.received
                        where j.plant = :plant and j.reel = any(:reels)
                        order by j.received""",
                        AgainRow.class)
                .setParameter("plant", plant)
                .setParameter("reels", reels.toArray(String[]::new))
                .getResultList()
                .stream()
                .collect(Collectors.groupingBy(
                        AgainRow::ofRecord, Collectors.mapping(AgainRow::toJudgedAgain, Collectors.toList())));
    }

    /** Keeps that a retest was accepted. */
    @Transactional
    public void accept(String plant, String reel, UUID record, RetestAcceptance acceptance) {
        String id = session.createNativeQuery(
                        """
                        insert into retest_acceptance (plant, record_id, reel, accepted_by, at, reason)
                        values (:plant, :record, :reel, :by, :at, :reason)
                        returning cast(id as text)""",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("record", record)
                .setParameter("reel", reel)
                .setParameter("by", acceptance.acceptedBy())
                .setParameter("at", UtcTimes.instant(acceptance.at()))
                .setParameter("reason", acceptance.reason())
                .getSingleResult();
        sealing.seal(LeafKind.RETEST_ACCEPTANCE, plant, List.of(id));
    }
}
