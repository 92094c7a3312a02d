package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotFaultsException;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.Pedigree.Direction;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.reel.ReelBelow;
import dev.reelproof.store.reel.Reels;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** The lots of each plant and what went into them. */
@ApplicationScoped
public class Lots {
    /** The most lots of one pedigree that is put in order as a whole: some hundred times those above a reel. */
    static final int MOST_LOTS = 100_000;

    /** Up to so many descendants are put in order before they are answered; more are answered as they are found. */
    public static final int MOST_IN_ORDER = 500;

    private static final Duration LONGEST_SEARCH = Duration.ofSeconds(5);

    /** Before the first reel of a long answer comes, all of them are sorted. */
    private static final Duration LONGEST_STEP = Duration.ofSeconds(30);

    private static final int LONGEST_ANSWER_SECONDS = 900;

    private final Reels reels;
    private final LotReading reading;
    private final LotLoading loading;
    private final PedigreeReading pedigrees;

    Lots(Reels reels, LotReading reading, LotLoading loading, PedigreeReading pedigrees) {
        this.pedigrees = pedigrees;
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

    /** A lot with what descends from it. */
    public sealed interface Descendants {
        /**
         * All of it.
         *
         * @param reels the reels of the pedigree by where they are, those shipped by recipient
         */
        record InOrder(Pedigree pedigree, List<ReelBelow> reels) implements Descendants {}

        /** More than {@value #MOST_IN_ORDER} lots; {@link #stream} gives them. */
        record Many() implements Descendants {}
    }

    /**
     * A lot with all that descends from it; empty when there is no such lot.
     *
     * @throws SearchTooLargeException when it takes too long to find
     */
    @Transactional
    public Optional<Descendants> descendants(String plant, LotId id) {
        Found found = find(plant, id, Direction.DESCENDANTS, MOST_IN_ORDER);
        if (found.members.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                found.isAll ? new Descendants.InOrder(found.inOrder(), found.reels) : new Descendants.Many());
    }

    /**
     * Gives a lot with all that descends from it, however many, as they are found: the lots, nearest first, then the links, those of
     * the nearest parents first, then the reels by where they are, those shipped by recipient. Nothing when there is no such lot.
     *
     * @throws SearchTooLargeException when the next ones take too long to find
     */
    public void stream(
            String plant,
            LotId id,
            Consumer<Pedigree.Entry> lots,
            Consumer<Pedigree.Link> links,
            Consumer<ReelBelow> below) {
        QuarkusTransaction.joiningExisting()
                .timeout(LONGEST_ANSWER_SECONDS)
                .run(() -> pedigrees.read(
                        plant, id, Direction.DESCENDANTS, Integer.MAX_VALUE, LONGEST_STEP, lots, links, below));
    }

    /**
     * A reel with all that it descends from; empty when there is no such reel. A reel that is registered but whose making was not
     * reported stands alone.
     *
     * @throws SearchTooLargeException when it is more than one answer may hold
     */
    @Transactional
    public Optional<Pedigree> ancestorsOfReel(String plant, LotId reel) {
        Found found = findAll(plant, reel, Direction.ANCESTORS);
        if (!found.members.isEmpty()) {
            return Optional.of(found.inOrder())
                    .filter(pedigree -> pedigree.lots().get(0).lot().kind() == LotKind.REEL);
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

    /**
     * A lot with all that descends from it, in order; empty when there is no such lot.
     *
     * @throws SearchTooLargeException when it is more than the program holds at once
     */
    @Transactional
    public Optional<Pedigree> allDescendants(String plant, LotId id) {
        Found found = findAll(plant, id, Direction.DESCENDANTS);
        return found.members.isEmpty() ? Optional.empty() : Optional.of(found.inOrder());
    }

    private Found findAll(String plant, LotId start, Direction direction) {
        Found found = find(plant, start, direction, MOST_LOTS);
        if (!found.isAll) {
            throw new SearchTooLargeException("the pedigree of lot " + start + " has more than " + MOST_LOTS
                    + " lots; ask for a lot nearer to what you look for");
        }
        return found;
    }

    /** The identifier of a reel, registered as a reel or as a lot of that kind; empty when there is none. */
    @Transactional
    public Optional<LotId> reelId(String plant, LotId reel) {
        boolean isReel = row(plant, reel)
                .map(lot -> lot.kind() == LotKind.REEL)
                .orElseGet(() -> reels.byId(plant, reel.value()).isPresent());
        return isReel ? Optional.of(reel) : Optional.empty();
    }

    /** What was read of a lot and all above or below it; no members when there is no such lot. */
    private record Found(
            LotId start,
            Direction direction,
            List<Pedigree.Member> members,
            List<Pedigree.Link> links,
            List<ReelBelow> reels,
            boolean isAll) {
        Pedigree inOrder() {
            return Pedigree.of(start, direction, members, links);
        }
    }

    private Found find(String plant, LotId start, Direction direction, int most) {
        List<Pedigree.Member> members = new ArrayList<>();
        List<Pedigree.Link> links = new ArrayList<>();
        List<ReelBelow> below = new ArrayList<>();
        boolean isAll = pedigrees.read(
                plant,
                start,
                direction,
                most,
                LONGEST_SEARCH,
                entry -> members.add(entry.lot()),
                links::add,
                below::add);
        return new Found(start, direction, members, links, below, isAll);
    }
}
