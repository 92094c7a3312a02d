package dev.reelproof.store.lot;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.Stream;
import org.hibernate.Session;

/** Lists the reports that wait, and those that waited in vain. */
@ApplicationScoped
public class WaitingList {
    private final Session session;

    WaitingList(Session session) {
        this.session = session;
    }

    /** A report that waits, and for what. */
    public record Waiting(LotId lot, LotKind kind, OffsetDateTime received, List<LotId> missing) {}

    /**
     * A report that had waited and turned out wrong.
     *
     * @param reportJson the report as the HTTP contract shapes it
     */
    public record RefusedLater(
            LotId lot, OffsetDateTime received, OffsetDateTime refused, String reason, String reportJson) {}

    private record WaitingRow(String lot, String kind, Instant received, String[] missing) {
        Waiting waiting() {
            return new Waiting(
                    new LotId(lot),
                    LotKind.named(kind),
                    UtcTimes.utc(received),
                    Stream.of(missing).map(LotId::new).toList());
        }
    }

    private record RefusedRow(String lot, Instant received, Instant refused, String reason, String report) {
        RefusedLater refusedLater() {
            return new RefusedLater(new LotId(lot), UtcTimes.utc(received), UtcTimes.utc(refused), reason, report);
        }
    }

    /** Reports that wait, oldest first. */
    @Transactional
    public List<Waiting> waiting(String plant, int limit) {
        return session
                .createNativeQuery(
                        """
                        select w.lot, w.report ->> 'kind', w.received,
                               array(select p.parent from waiting_parent p
                                     where p.plant = w.plant and p.lot = w.lot order by p.parent)
                        from waiting_report w where w.plant = :plant order by w.received, w.lot limit :limit""",
                        WaitingRow.class)
                .setParameter("plant", plant)
                .setParameter("limit", limit)
                .getResultList()
                .stream()
                .map(WaitingRow::waiting)
                .toList();
    }

    /** How many reports wait. */
    @Transactional
    public int count(String plant) {
        return session.createNativeQuery("select count(*) from waiting_report where plant = :plant", Long.class)
                .setParameter("plant", plant)
                .getSingleResult()
                .intValue();
    }

    /** Reports that had waited and turned out wrong, the newest first. */
    @Transactional
    public List<RefusedLater> refusedLater(String plant, int limit) {
        return session
                .createNativeQuery(
                        """
                        select lot, received, refused, reason, cast(report as text) from refused_report
                        where plant = :plant order by id desc limit :limit""",
                        RefusedRow.class)
                .setParameter("plant", plant)
                .setParameter("limit", limit)
                .getResultList()
                .stream()
                .map(RefusedRow::refusedLater)
                .toList();
    }
}
