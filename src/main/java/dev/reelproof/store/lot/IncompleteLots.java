package dev.reelproof.store.lot;

import dev.reelproof.genealogy.ExpectedInputs;
import dev.reelproof.genealogy.IncompleteLot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.StatementTimeout;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** Finds reels and lots of whose making not all can have been reported. */
@ApplicationScoped
public class IncompleteLots {
    private static final int ROWS_AT_ONCE = 1_000;

    private final Session session;
    private final StatementTimeout timeout;

    IncompleteLots(Session session, StatementTimeout timeout) {
        this.session = session;
        this.timeout = timeout;
    }

    private record Row(String id, String kind, Instant made, String[] parents) {
        LotKind lotKind() {
            return LotKind.named(kind);
        }

        List<LotKind> parentKinds() {
            return Stream.of(parents).map(LotKind::named).toList();
        }

        boolean isReelWithoutInputs() {
            return parents.length == 0 && lotKind() == LotKind.REEL;
        }
    }

    /** What a lot is, and of what kinds its parents are. */
    private record Kinds(LotKind lot, List<LotKind> parents) {}

    /**
     * Reels that are registered but of which no inputs were reported.
     *
     * @param from the earliest time of registration, or of making for one that is a lot alone; any when absent
     * @param to the latest, itself included; any when absent
     * @throws SearchTooLargeException when it takes too long to find
     */
    @Transactional
    public List<LotId> reelsWithoutInputs(
            String plant, @Nullable OffsetDateTime from, @Nullable OffsetDateTime to, int limit) {
        return timeout.within(LotSearches.LONGEST, LotSearches.TOO_LONG, () -> new TimeWindow(from, to)
                        .bind(session.createNativeQuery(
                                        """
                                        select id from (
                                            select r.id from reel r
                                            where r.plant = :plant and %s
                                            union
                                            select l.id from lot l
                                            where l.plant = :plant and l.kind = :reel and %s) reels
                                        where not exists (
                                            select from lot_input i where i.plant = :plant and i.child = reels.id)
                                        order by id limit :limit"""
                                                .formatted(
                                                        TimeWindow.contains("r.registered"),
                                                        TimeWindow.contains("l.made")),
                                        String.class)
                                .setParameter("plant", plant)
                                .setParameter("reel", LotKind.REEL.word())
                                .setParameter("limit", limit))
                        .getResultList()
                        .stream()
                        .map(LotId::new)
                        .toList());
    }

    /**
     * Lots that were made within a time and lack a kind of input that lots of their kind always have, oldest first. Reels without
     * any input are not among them: {@link #reelsWithoutInputs} has those.
     *
     * @param from the earliest time; any when absent
     * @param to the latest time, itself included; any when absent
     * @throws SearchTooLargeException when it takes too long to find
     */
    @Transactional
    public List<IncompleteLot> lacking(
            String plant, @Nullable OffsetDateTime from, @Nullable OffsetDateTime to, int limit) {
        return timeout.within(LotSearches.LONGEST, LotSearches.TOO_LONG, () -> {
            try (Stream<Row> rows = new TimeWindow(from, to)
                    .bind(session.createNativeQuery(
                                    """
                                    select l.id, l.kind, l.made,
                                           array(select distinct p.kind from lot_input i
                                                 join lot p on p.plant = i.plant and p.id = i.parent
                                                 where i.plant = l.plant and i.child = l.id order by 1)
                                    from lot l
                                    where l.plant = :plant and l.kind = any(:kinds) and %s
                                    order by l.made, l.id"""
                                            .formatted(TimeWindow.contains("l.made")),
                                    Row.class)
                            .setParameter("plant", plant)
                            .setParameter("kinds", kindsWithExpectedInputs()))
                    .setFetchSize(ROWS_AT_ONCE)
                    .getResultStream()) {
                return lacking(rows, limit);
            }
        });
    }

    private static String[] kindsWithExpectedInputs() {
        return Arrays.stream(LotKind.values())
                .filter(kind -> !ExpectedInputs.missing(kind, List.of()).isEmpty())
                .map(LotKind::word)
                .toArray(String[]::new);
    }

    private static List<IncompleteLot> lacking(Stream<Row> rows, int limit) {
        // There are few combinations of kinds: each is judged once, however many lots have it.
        Map<Kinds, List<String>> missingOf = new HashMap<>();
        List<IncompleteLot> found = new ArrayList<>();
        rows.takeWhile(row -> found.size() < limit)
                .filter(row -> !row.isReelWithoutInputs())
                .forEach(row -> {
                    List<String> missing = missingOf.computeIfAbsent(
                            new Kinds(row.lotKind(), row.parentKinds()),
                            kinds -> ExpectedInputs.missing(kinds.lot(), kinds.parents()));
                    if (!missing.isEmpty()) {
                        found.add(new IncompleteLot(
                                new LotId(row.id()), row.lotKind(), UtcTimes.utc(row.made()), missing));
                    }
                });
        return found;
    }
}
