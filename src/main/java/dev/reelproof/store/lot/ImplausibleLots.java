package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.ImplausibleLot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.admission.LotAdmission;
import dev.reelproof.store.UtcTimes;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** What can hardly be so in registered lots. */
@ApplicationScoped
public class ImplausibleLots {
    /** Findings by position have ordinals of their own: they may be found later than the rest, and twice. */
    private static final int FIRST_BY_POSITION = 1_000_000;

    private final Session session;

    ImplausibleLots(Session session) {
        this.session = session;
    }

    /**
     * A link of which another lot claims the same stretch.
     *
     * @param lot the child
     * @param ordinal the place of the link among the child's inputs
     */
    public record ClaimedTwice(LotId lot, int ordinal, Implausibility implausibility) {}

    private record Row(String lot, @Nullable String parent, String message) {
        LotId lotId() {
            return new LotId(lot);
        }

        Implausibility implausibility() {
            return new Implausibility(parent == null ? null : new LotId(parent), message);
        }
    }

    private record Newest(String lot, Instant registered) {}

    /** Keeps what was found in lots as they were admitted. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void insert(String plant, List<LotAdmission.Admitted> admitted, OffsetDateTime now) {
        JsonRows rows = new JsonRows();
        for (LotAdmission.Admitted one : admitted) {
            for (int i = 0; i < one.implausible().size(); i++) {
                add(rows, one.report().lot().id(), i, one.implausible().get(i));
            }
        }
        insert(plant, rows, now);
    }

    /** Keeps what was found by position. What was found of a link before stays as it was. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void insertByPosition(String plant, List<ClaimedTwice> links, OffsetDateTime now) {
        JsonRows rows = new JsonRows();
        links.forEach(link -> add(rows, link.lot(), FIRST_BY_POSITION + link.ordinal(), link.implausibility()));
        insert(plant, rows, now);
    }

    private static void add(JsonRows rows, LotId lot, int ordinal, Implausibility found) {
        LotId parent = found.parent();
        rows.add()
                .put("lot", lot.value())
                .put("ordinal", ordinal)
                .put("parent", parent == null ? null : parent.value())
                .put("message", found.message());
    }

    private void insert(String plant, JsonRows rows, OffsetDateTime now) {
        rows.insert(
                session,
                """
                insert into implausible_link (plant, lot, ordinal, parent, message, registered)
                select :plant, lot, ordinal, parent, message, cast(:now as timestamptz)
                from json_to_recordset(cast(:rows as json)) as r(lot text, ordinal int, parent text, message text)
                on conflict do nothing""",
                plant,
                now);
    }

    /** What was found in each of these lots; lots in which all fits are left out. */
    @Transactional
    Map<LotId, List<Implausibility>> of(String plant, Collection<LotId> lots) {
        return session
                .createNativeQuery(
                        """
                        select lot, parent, message from implausible_link
                        where plant = :plant and lot = any(:lots) order by lot, ordinal""",
                        Row.class)
                .setParameter("plant", plant)
                .setParameter("lots", Identifiers.of(lots))
                .getResultList()
                .stream()
                .collect(Collectors.groupingBy(
                        Row::lotId, Collectors.mapping(Row::implausibility, Collectors.toList())));
    }

    /** Lots in which something can hardly be so, those in which it was found last first. */
    @Transactional
    public List<ImplausibleLot> newest(String plant, int limit) {
        List<Newest> newest = session.createNativeQuery(
                        """
                        select f.lot, f.registered from implausible_link f
                        where f.plant = :plant
                          and not exists (select from implausible_link g
                                          where g.plant = f.plant and g.lot = f.lot
                                            and (g.registered, g.ordinal) > (f.registered, f.ordinal))
                        order by f.registered desc, f.lot limit :limit""",
                        Newest.class)
                .setParameter("plant", plant)
                .setParameter("limit", limit)
                .getResultList();
        Map<LotId, List<Implausibility>> found =
                of(plant, newest.stream().map(row -> new LotId(row.lot())).toList());
        return newest.stream()
                .map(row -> new ImplausibleLot(
                        new LotId(row.lot()),
                        UtcTimes.utc(row.registered()),
                        Objects.requireNonNull(
                                found.get(new LotId(row.lot())), "something was found in each of these lots")))
                .toList();
    }
}
