package dev.reelproof.store.lot;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.admission.RefusedReport;
import dev.reelproof.genealogy.admission.WaitingReport;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
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

    private record WaitingRow(String lot, String kind, Instant received, String[] missing) {
        WaitingReport waiting() {
            return new WaitingReport(
                    new LotId(lot),
                    LotKind.named(kind),
                    UtcTimes.utc(received),
                    Stream.of(missing).map(LotId::new).toList());
        }
    }

    private record RefusedRow(String lot, Instant received, Instant refused, String reason, String report) {
        RefusedReport refusedLater() {
            return new RefusedReport(new LotId(lot), UtcTimes.utc(received), UtcTimes.utc(refused), reason, report);
        }
    }

    /** Reports that wait, oldest first. */
    @Transactional
    public List<WaitingReport> waiting(String plant, int limit) {
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
    public List<RefusedReport> refusedLater(String plant, int limit) {
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
