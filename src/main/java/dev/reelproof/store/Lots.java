package dev.reelproof.store;

import dev.reelproof.access.Audit;
import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotChecks;
import dev.reelproof.genealogy.LotFault;
import dev.reelproof.genealogy.LotFaultsException;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.Pedigree.Direction;
import dev.reelproof.genealogy.Stock;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.QueryTimeoutException;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.Session;

/** The lots of each plant and what went into them. */
@ApplicationScoped
public class Lots {
    /** The most lots that one pedigree holds; some ten times those of a rod lot that went into 500 reels. */
    static final int MOST_LOTS = 100_000;

    private static final String LONGEST_SEARCH = "5s";

    /** Only identifiers go round: UNION then drops a lot that was there before, so that each counts once and a circle ends. */
    private static final String FIND_RELATIVES =
            """
            with recursive relative(id) as (
                select unnest(cast(:starts as text[]))
                union
                select i.%1$s from relative r join lot_input i on i.plant = :plant and i.%2$s = r.id)
            select id from relative limit :most""";

    private static final String FIND_ANCESTORS = FIND_RELATIVES.formatted("parent", "child");
    private static final String FIND_DESCENDANTS = FIND_RELATIVES.formatted("child", "parent");

    private final Session session;
    private final Reels reels;
    private final Audit audit;

    Lots(Session session, Reels reels, Audit audit) {
        this.session = session;
        this.reels = reels;
        this.audit = audit;
    }

    /**
     * Registers a lot; the same lot again changes nothing.
     *
     * @param sourceSha256 the SHA-256 of the report as received
     * @param now the time of receipt
     * @return whether it is new
     * @throws LotFaultsException when it cannot be so; nothing is kept
     * @throws LotConflictException when another lot has its identifier
     */
    @Transactional
    public boolean register(Lot lot, String sourceSha256, OffsetDateTime now) {
        List<LotRow> parents = lockParents(lot);
        Optional<RegisteredLot> before = byId(lot.plant(), lot.id());
        if (before.isPresent()) {
            requireSame(before.get().lot(), lot);
            return false;
        }
        if (lot.kind() != LotKind.REEL
                && reels.byId(lot.plant(), lot.id().value()).isPresent()) {
            throw new LotFaultsException(List.of(new LotFault(
                    "/id",
                    "'" + lot.id() + "' is the number of a registered reel; a lot of kind "
                            + lot.kind().word() + " needs an identifier of its own")));
        }
        LotChecks.check(lot, stocks(lot, parents), ancestors(lot));
        if (!insert(lot, sourceSha256, now)) {
            // Another transaction registered it since we looked.
            requireSame(byId(lot.plant(), lot.id()).orElseThrow().lot(), lot);
            return false;
        }
        for (int i = 0; i < lot.inputs().size(); i++) {
            LotInputRow.of(lot.plant(), lot.id(), i, lot.inputs().get(i)).persist();
        }
        audit.write(
                lot.plant(),
                "lot-registered",
                "lot/" + lot.id(),
                null,
                Map.of("kind", lot.kind().word(), "inputs", lot.inputs().size(), "sha256", sourceSha256));
        return true;
    }

    /** Children of one parent register one after the other, so that what they take together is not more than there is. */
    private List<LotRow> lockParents(Lot lot) {
        Turns.take(
                session,
                Stream.of(parentIds(lot))
                        .map(parent -> lot.plant() + "/lot/" + parent)
                        .toArray(String[]::new));
        return session.createNativeQuery(
                        "select * from lot where plant = :plant and id = any(:ids) order by id", LotRow.class)
                .setParameter("plant", lot.plant())
                .setParameter("ids", parentIds(lot))
                .getResultList();
    }

    private static void requireSame(Lot registered, Lot sent) {
        List<String> differences = sent.differencesFrom(registered);
        if (!differences.isEmpty()) {
            throw new LotConflictException("lot " + sent.id() + " is registered with other content ("
                    + String.join(", ", differences)
                    + "); a registered lot does not change: send it as it was, or give this one its own identifier");
        }
    }

    private Map<LotId, Stock> stocks(Lot lot, List<LotRow> parents) {
        // Summed in the order of the children, so that the last digit is the same on every machine.
        Map<String, Double> taken = session
                .createNativeQuery(
                        """
                        select parent, sum(amount_base order by child) from lot_input
                        where plant = :plant and parent = any(:ids) group by parent""",
                        Object[].class)
                .setParameter("plant", lot.plant())
                .setParameter("ids", parentIds(lot))
                .getResultList()
                .stream()
                .collect(Collectors.toMap(row -> (String) row[0], row -> (Double) row[1]));
        return parents.stream()
                .map(parent -> new Stock(
                        parent.lotId(),
                        parent.quantity(),
                        taken.getOrDefault(parent.id, 0.0),
                        UtcTimes.utc(parent.made)))
                .collect(Collectors.toMap(Stock::id, Function.identity()));
    }

    /** The parents and all from which they descend. */
    private Set<LotId> ancestors(Lot lot) {
        return relatives(FIND_ANCESTORS, lot.plant(), lot.id(), parentIds(lot)).stream()
                .map(LotId::new)
                .collect(Collectors.toSet());
    }

    /** The parents; without the lot itself, which is refused as its own parent in any case. */
    private static String[] parentIds(Lot lot) {
        return lot.inputs().stream()
                .map(LotInput::lot)
                .filter(parent -> !parent.equals(lot.id()))
                .map(LotId::value)
                .toArray(String[]::new);
    }

    private boolean insert(Lot lot, String sourceSha256, OffsetDateTime now) {
        return session.createNativeMutationQuery(
                                """
                                insert into lot (plant, id, kind, quantity_value, quantity_unit, made, step, machine, source_sha256, registered)
                                values (:plant, :id, :kind, :value, :unit, :made, cast(:step as text), cast(:machine as text), :sha256, :now)
                                on conflict (plant, id) do nothing""")
                        .setParameter("plant", lot.plant())
                        .setParameter("id", lot.id().value())
                        .setParameter("kind", lot.kind().word())
                        .setParameter("value", lot.quantity().value())
                        .setParameter("unit", lot.quantity().unit())
                        .setParameter("made", UtcTimes.instant(lot.made()))
                        .setParameter("step", lot.step())
                        .setParameter("machine", lot.machine())
                        .setParameter("sha256", sourceSha256)
                        .setParameter("now", UtcTimes.instant(now))
                        .executeUpdate()
                == 1;
    }

    /** The lot of that identifier. */
    @Transactional
    public Optional<RegisteredLot> byId(String plant, LotId id) {
        return row(plant, id).map(row -> new RegisteredLot(row.toLot(inputs(plant, id)), UtcTimes.utc(row.registered)));
    }

    private static Optional<LotRow> row(String plant, LotId id) {
        return LotRow.<LotRow>find("plant = ?1 and id = ?2", plant, id.value()).firstResultOptional();
    }

    private static List<LotInput> inputs(String plant, LotId child) {
        return LotInputRow.<LotInputRow>find("plant = ?1 and child = ?2 order by ordinal", plant, child.value())
                .stream()
                .map(LotInputRow::toInput)
                .toList();
    }

    /**
     * A lot with all that descends from it; empty when there is no such lot.
     *
     * @throws PedigreeTooLargeException when it is more than one answer may hold
     */
    @Transactional
    public Optional<Pedigree> descendants(String plant, LotId id) {
        return row(plant, id).map(row -> pedigree(plant, id, Direction.DESCENDANTS));
    }

    /**
     * A reel with all that it descends from; empty when there is no such reel. A reel that is registered but whose making was not
     * reported stands alone.
     *
     * @throws PedigreeTooLargeException when it is more than one answer may hold
     */
    @Transactional
    public Optional<Pedigree> ancestorsOfReel(String plant, LotId reel) {
        Optional<LotRow> row = row(plant, reel);
        if (row.isPresent()) {
            return row.filter(lot -> LotKind.named(lot.kind) == LotKind.REEL)
                    .map(lot -> pedigree(plant, reel, Direction.ANCESTORS));
        }
        return reels.byId(plant, reel.value()).map(registered -> {
            Amount length = new Amount(registered.length().metres(), "m");
            return Pedigree.of(
                    reel,
                    Direction.ANCESTORS,
                    List.of(new Pedigree.Member(reel, plant, LotKind.REEL, length, null, null, null)),
                    List.of());
        });
    }

    private Pedigree pedigree(String plant, LotId start, Direction direction) {
        limitTime();
        try {
            String[] ids = relatives(
                            direction == Direction.ANCESTORS ? FIND_ANCESTORS : FIND_DESCENDANTS,
                            plant,
                            start,
                            start.value())
                    .toArray(String[]::new);
            List<LotRow> lots = session.createNativeQuery(
                            "select * from lot where plant = :plant and id = any(:ids)", LotRow.class)
                    .setParameter("plant", plant)
                    .setParameter("ids", ids)
                    .getResultList();
            List<LotInputRow> links = session.createNativeQuery(
                            """
                            select * from lot_input
                            where plant = :plant and child = any(:ids) and parent = any(:ids)""",
                            LotInputRow.class)
                    .setParameter("plant", plant)
                    .setParameter("ids", ids)
                    .getResultList();
            return Pedigree.of(
                    start,
                    direction,
                    lots.stream().map(LotRow::toMember).toList(),
                    links.stream().map(LotInputRow::toLink).toList());
        } catch (QueryTimeoutException e) {
            throw new PedigreeTooLargeException("the pedigree of lot " + start + " was not found within "
                    + LONGEST_SEARCH + "; ask again later, or for a lot nearer to what you look for");
        }
    }

    private void limitTime() {
        // Ends with the transaction.
        session.createNativeQuery("select set_config('statement_timeout', :most, true)", String.class)
                .setParameter("most", LONGEST_SEARCH)
                .getSingleResult();
    }

    private List<String> relatives(String query, String plant, LotId asked, String... starts) {
        List<String> ids = session.createNativeQuery(query, String.class)
                .setParameter("starts", starts)
                .setParameter("plant", plant)
                .setParameter("most", MOST_LOTS + 1)
                .getResultList();
        if (ids.size() > MOST_LOTS) {
            throw new PedigreeTooLargeException("the pedigree of lot " + asked + " has more than " + MOST_LOTS
                    + " lots; ask for a lot nearer to what you look for");
        }
        return ids;
    }
}
