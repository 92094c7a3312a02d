package dev.reelproof.store.lot.admission;

import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.admission.LotAdmission;
import dev.reelproof.genealogy.admission.LotReport;
import dev.reelproof.genealogy.admission.WaitingParents;
import dev.reelproof.store.RowJson;
import dev.reelproof.store.UtcTimes;
import dev.reelproof.store.lot.Identifiers;
import dev.reelproof.store.lot.JsonRows;
import dev.reelproof.store.lot.LotJson;
import dev.reelproof.store.lot.LotLocks;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.hibernate.Session;

/** The queue of reports that wait for their parents. Who changes it has the plant's lots to itself ({@link LotLocks#takeAll}). */
@ApplicationScoped
public class WaitingReports {
    private final Session session;

    WaitingReports(Session session) {
        this.session = session;
    }

    /** A report that waited, and since when. */
    public record Waited(LotReport report, OffsetDateTime since) {}

    /** A report that waited and turned out wrong, with the reason. */
    public record RefusedReport(Waited waited, String reason) {}

    private record Row(String report, String sha256, Instant received) {
        LotReport lotReport() {
            return new LotReport(LotJson.lot(report), sha256);
        }

        Waited waited() {
            return new Waited(lotReport(), UtcTimes.utc(received));
        }
    }

    private record Link(String lot, String parent) {}

    /** Whether any report waits for a lot. */
    @Transactional
    public boolean isWaitedFor(String plant, LotId lot) {
        return session.createNativeQuery(
                        "select exists (select from waiting_parent where plant = :plant and parent = :lot)",
                        Boolean.class)
                .setParameter("plant", plant)
                .setParameter("lot", lot.value())
                .getSingleResult();
    }

    /** The lots among these whose reports wait. */
    @Transactional
    Map<LotId, Lot> among(String plant, Collection<LotId> lots) {
        return session
                .createNativeQuery(
                        """
                        select cast(report as text), source_sha256, received from waiting_report
                        where plant = :plant and lot = any(:lots)""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("lots", Identifiers.of(lots))
                .getResultList()
                .stream()
                .map(row -> row.lotReport().lot())
                .collect(Collectors.toMap(Lot::id, Function.identity()));
    }

    /** As {@link WaitingParents#above}. */
    @Transactional
    public Map<LotId, Set<LotId>> parentsAbove(String plant, Set<LotId> lots) {
        Map<LotId, Set<LotId>> parents = new TreeMap<>();
        session.createNativeQuery(
                        """
                        with recursive above(id) as (
                            select unnest(cast(:starts as text[]))
                            union
                            select w.parent from above a join waiting_parent w on w.plant = :plant and w.lot = a.id)
                        select w.lot, w.parent from above a join waiting_parent w on w.plant = :plant and w.lot = a.id""",
                        Link.class)
                .setParameter("starts", Identifiers.of(lots))
                .setParameter("plant", plant)
                .getResultList()
                .forEach(link -> parents.computeIfAbsent(new LotId(link.lot()), id -> new TreeSet<>())
                        .add(new LotId(link.parent())));
        return parents;
    }

    /** Lets reports wait. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void add(String plant, List<LotAdmission.Waiting> waiting, OffsetDateTime now) {
        JsonRows reports = new JsonRows();
        JsonRows parents = new JsonRows();
        for (LotAdmission.Waiting one : waiting) {
            String lot = one.report().lot().id().value();
            reports.add()
                    .put("lot", lot)
                    .put("report", LotJson.lot(one.report().lot()))
                    .put("sha256", one.report().sha256());
            one.missing().forEach(parent -> parents.add().put("lot", lot).put("parent", parent.value()));
        }
        reports.insert(
                session,
                """
                insert into waiting_report (plant, lot, report, source_sha256, received)
                select :plant, lot, cast(report as jsonb), sha256, cast(:now as timestamptz)
                from json_to_recordset(cast(:rows as json)) as r(lot text, report text, sha256 text)""",
                plant,
                now);
        parents.insert(
                session,
                """
                insert into waiting_parent (plant, parent, lot)
                select :plant, parent, lot from json_to_recordset(cast(:rows as json)) as r(lot text, parent text)""",
                plant);
    }

    /**
     * Ends the wait for these lots, which are registered now.
     *
     * @return the lots whose reports waited for them and wait for no other, by identifier
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public List<LotId> endWaitFor(String plant, Collection<LotId> registered) {
        return session
                .createNativeQuery(
                        """
                        with come as (
                            delete from waiting_parent where plant = :plant and parent = any(:ids) returning lot, parent)
                        select distinct c.lot from come c
                        where not exists (select from waiting_parent w
                                          where w.plant = :plant and w.lot = c.lot and w.parent <> all(:ids))
                        order by c.lot""",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("ids", Identifiers.of(registered))
                .getResultList()
                .stream()
                .map(LotId::new)
                .toList();
    }

    /** Takes the reports of these lots out of the queue, in no order. */
    @Transactional(Transactional.TxType.MANDATORY)
    public List<Waited> takeOut(String plant, Collection<LotId> lots) {
        return session
                .createNativeQuery(
                        """
                        delete from waiting_report where plant = :plant and lot = any(:lots)
                        returning cast(report as text), source_sha256, received""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("lots", Identifiers.of(lots))
                .getResultList()
                .stream()
                .map(Row::waited)
                .toList();
    }

    /** Keeps reports that waited and turned out wrong, for those who sent them. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void keepRefused(String plant, List<RefusedReport> refused, OffsetDateTime now) {
        JsonRows rows = new JsonRows();
        for (RefusedReport one : refused) {
            LotReport report = one.waited().report();
            rows.add()
                    .put("lot", report.lot().id().value())
                    .put("report", LotJson.lot(report.lot()))
                    .put("sha256", report.sha256())
                    .put("received", JsonRows.text(one.waited().since()))
                    .put("reason", one.reason());
        }
        rows.insert(
                session,
                """
                insert into refused_report (plant, lot, report, source_sha256, received, refused, reason)
                select :plant, lot, cast(report as jsonb), sha256, received, cast(:now as timestamptz), reason
                from json_to_recordset(cast(:rows as json))
                    as r(lot text, report text, sha256 text, received timestamptz, reason text)""",
                plant,
                now);
    }

    /**
     * Takes one report out of the queue. What waits for its lot goes on waiting.
     *
     * @return all that is known of it, as an audit entry keeps it; empty when no report of that lot waits
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public Optional<Map<String, ?>> withdraw(String plant, LotId lot) {
        List<String> missing = session.createNativeQuery(
                        "select parent from waiting_parent where plant = :plant and lot = :lot order by parent",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("lot", lot.value())
                .getResultList();
        return session
                .createNativeQuery(
                        """
                        delete from waiting_report where plant = :plant and lot = :lot
                        returning cast(report as text), source_sha256, received""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("lot", lot.value())
                .getResultList()
                .stream()
                .findFirst()
                .map(row -> Map.of(
                        "report", RowJson.read(row.report()),
                        "sha256", row.sha256(),
                        "received", row.received().toString(),
                        "waitedFor", missing));
    }
}
