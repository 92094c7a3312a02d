package dev.reelproof.store.lot;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.Pedigree.Direction;
import dev.reelproof.genealogy.ReelBelow;
import dev.reelproof.genealogy.RegisteredLot;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.reel.Reels;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.hibernate.Session;

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

    private final Session session;
    private final Reels reels;
    private final LotReading reading;
    private final PedigreeReading pedigrees;

    Lots(Session session, Reels reels, LotReading reading, PedigreeReading pedigrees) {
        this.session = session;
        this.reels = reels;
        this.reading = reading;
        this.pedigrees = pedigrees;
    }

    /** The lot of that identifier. */
    @Transactional
    public Optional<RegisteredLot> byId(String plant, LotId id) {
        return Optional.ofNullable(reading.byIds(plant, List.of(id)).get(id));
    }

    /** Those of these that are neither a lot nor a registered reel, in order. */
    @Transactional
    public List<LotId> unknown(String plant, Collection<LotId> ids) {
        return session
                .createNativeQuery(
                        """
                        select r from unnest(cast(:ids as text[])) r
                        where not exists (select from lot where plant = :plant and id = r)
                          and not exists (select from reel where plant = :plant and id = r)
                        order by r""",
                        String.class)
                .setParameter("plant", plant)
                .setParameter("ids", Identifiers.of(ids))
                .getResultList()
                .stream()
                .map(LotId::new)
                .toList();
    }

    /** The identifier of a reel, registered as a reel or as a lot of that kind; empty when there is none. */
    @Transactional
    public Optional<LotId> reelId(String plant, LotId reel) {
        boolean isReel = kind(plant, reel)
                .map(kind -> kind == LotKind.REEL)
                .orElseGet(() -> reels.byId(plant, reel.value()).isPresent());
        return isReel ? Optional.of(reel) : Optional.empty();
    }

    private Optional<LotKind> kind(String plant, LotId id) {
        return session.createNativeQuery("select kind from lot where plant = :plant and id = :id", String.class)
                .setParameter("plant", plant)
                .setParameter("id", id.value())
                .uniqueResultOptional()
                .map(LotKind::named);
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
        Gathered found = gather(plant, id, Direction.DESCENDANTS, MOST_IN_ORDER);
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
    @Transactional(Transactional.TxType.MANDATORY)
    public void stream(
            String plant,
            LotId id,
            Consumer<Pedigree.Entry> lots,
            Consumer<Pedigree.Link> links,
            Consumer<ReelBelow> below) {
        pedigrees.limitPauses();
        pedigrees.read(plant, id, Direction.DESCENDANTS, LONGEST_STEP, new PedigreeReading.Reader() {
            @Override
            public boolean lot(Pedigree.Entry lot) {
                lots.accept(lot);
                return true;
            }

            @Override
            public void link(Pedigree.Link link) {
                links.accept(link);
            }

            @Override
            public void reel(ReelBelow reel) {
                below.accept(reel);
            }
        });
    }

    /**
     * A reel with all that it descends from; empty when there is no such reel. A reel that is registered but whose making was not
     * reported stands alone.
     *
     * @throws SearchTooLargeException when it is more than one answer may hold
     */
    @Transactional
    public Optional<Pedigree> ancestorsOfReel(String plant, LotId reel) {
        Gathered found = gatherAll(plant, reel, Direction.ANCESTORS);
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
        Gathered found = gatherAll(plant, id, Direction.DESCENDANTS);
        return found.members.isEmpty() ? Optional.empty() : Optional.of(found.inOrder());
    }

    private Gathered gatherAll(String plant, LotId start, Direction direction) {
        Gathered found = gather(plant, start, direction, MOST_LOTS);
        if (!found.isAll) {
            throw new SearchTooLargeException("the pedigree of lot " + start + " has more than " + MOST_LOTS
                    + " lots; ask for a lot nearer to what you look for");
        }
        return found;
    }

    private Gathered gather(String plant, LotId start, Direction direction, int most) {
        Gathered found = new Gathered(start, direction, most);
        found.isAll = pedigrees.read(plant, start, direction, LONGEST_SEARCH, found);
        return found;
    }

    /** What was read of a lot and all above or below it, up to a number of lots; no members when there is no such lot. */
    private static final class Gathered implements PedigreeReading.Reader {
        private final LotId start;
        private final Direction direction;
        private final int most;
        private final List<Pedigree.Member> members = new ArrayList<>();
        private final List<Pedigree.Link> links = new ArrayList<>();
        private final List<ReelBelow> reels = new ArrayList<>();
        private boolean isAll;

        Gathered(LotId start, Direction direction, int most) {
            this.start = start;
            this.direction = direction;
            this.most = most;
        }

        @Override
        public boolean lot(Pedigree.Entry lot) {
            if (members.size() == most) {
                return false;
            }
            members.add(lot.lot());
            return true;
        }

        @Override
        public void link(Pedigree.Link link) {
            links.add(link);
        }

        @Override
        public void reel(ReelBelow reel) {
            reels.add(reel);
        }

        Pedigree inOrder() {
            return Pedigree.of(start, direction, members, links);
        }
    }
}
