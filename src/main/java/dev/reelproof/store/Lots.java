package dev.reelproof.store;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Implausible;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotFaultsException;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.Pedigree.Direction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.QueryTimeoutException;
import jakarta.transaction.Transactional;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    private final LotReading reading;
    private final LotLoading loading;

    Lots(Session session, Reels reels, LotReading reading, LotLoading loading) {
        this.session = session;
        this.reels = reels;
        this.reading = reading;
        this.loading = loading;
    }

    /**
     * Registers a lot; the same lot again changes nothing.
     *
     * @param sha256 the SHA-256 of the report as received
     * @param now the time of receipt
     * @return whether it is new
     * @throws LotFaultsException when it cannot be so; nothing is kept
     * @throws LotConflictException when another lot has its identifier
     */
    public boolean register(Lot lot, String sha256, OffsetDateTime now) {
        LotLoading.Outcome outcome = loading.takeOne(lot.plant(), new LotLoading.Report(lot, sha256), now);
        return switch (outcome.fate()) {
            case REGISTERED -> true;
            case KNOWN -> false;
            case CONFLICT -> throw new LotConflictException(
                    outcome.faults().get(0).message());
            case REFUSED, WAITING -> throw new LotFaultsException(outcome.faults());
        };
    }

    /** The lot of that identifier. */
    @Transactional
    public Optional<RegisteredLot> byId(String plant, LotId id) {
        return Optional.ofNullable(reading.lots(plant, List.of(id)).get(id));
    }

    private static Optional<LotRow> row(String plant, LotId id) {
        return LotRow.<LotRow>find("plant = ?1 and id = ?2", plant, id.value()).firstResultOptional();
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
            return row.filter(lot -> lot.kind() == LotKind.REEL).map(lot -> pedigree(plant, reel, Direction.ANCESTORS));
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

    /** The identifier of a reel, registered as a reel or as a lot of that kind; empty when there is none. */
    @Transactional
    public Optional<LotId> reelId(String plant, LotId reel) {
        boolean isReel = row(plant, reel)
                .map(lot -> lot.kind() == LotKind.REEL)
                .orElseGet(() -> reels.byId(plant, reel.value()).isPresent());
        return isReel ? Optional.of(reel) : Optional.empty();
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
            Map<LotId, List<Implausible>> implausible =
                    reading.implausible(plant, lots.stream().map(LotRow::lotId).toList());
            return Pedigree.of(
                    start,
                    direction,
                    lots.stream()
                            .map(row -> row.toMember(implausible.getOrDefault(row.lotId(), List.of())))
                            .toList(),
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
