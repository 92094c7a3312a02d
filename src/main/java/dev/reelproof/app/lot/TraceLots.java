package dev.reelproof.app.lot;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Pedigree;
import dev.reelproof.genealogy.PositionTrace;
import dev.reelproof.genealogy.ReelBelow;
import dev.reelproof.genealogy.RegisteredLot;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.lot.Lots;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Traces a lot to what descends from it, a reel to what it was made from, and a place on a reel to its stretches of all that.
 *
 * <p>The plant is the caller's where none is named. Each refuses with {@link NothingThereException} what is not registered, and with {@link
 * IntakeException} what would take too long.
 */
@ApplicationScoped
public class TraceLots {
    /** Up to so many descendants are answered in order; more are answered as they are found. */
    public static final int MOST_IN_ORDER = Lots.MOST_IN_ORDER;

    private static final Duration LONGEST_ANSWER = Duration.ofMinutes(15);

    private final Lots lots;
    private final LotFinder finder;
    private final Plants plants;

    TraceLots(Lots lots, LotFinder finder, Plants plants) {
        this.lots = lots;
        this.finder = finder;
        this.plants = plants;
    }

    /** A lot as registered. */
    public RegisteredLot lot(String lot, @Nullable String plantNamed) {
        return finder.find("lot", lot, plantNamed, lots::byId);
    }

    /** What descends from a lot, the lot itself included. */
    public sealed interface Descendants {
        /**
         * All of it, in order.
         *
         * @param reels the reels of the pedigree by where they are, those shipped by recipient
         */
        record InOrder(Pedigree pedigree, List<ReelBelow> reels) implements Descendants {}

        /** More than {@value TraceLots#MOST_IN_ORDER} lots; {@link TraceLots#stream} gives them as they are found. */
        record Many(String plant, LotId lot) implements Descendants {}
    }

    /** A lot with all that descends from it. */
    public Descendants descendants(String lot, @Nullable String plantNamed) {
        Lots.Descendants found = finder.find("lot", lot, plantNamed, lots::descendants);
        return found instanceof Lots.Descendants.InOrder all
                ? new Descendants.InOrder(all.pedigree(), all.reels())
                : new Descendants.Many(plants.named(plantNamed, "plant"), new LotId(lot));
    }

    /**
     * Gives descendants as they are found: the lots, nearest first, then the links, those of the nearest parents first, then the reels
     * by where they are, those shipped by recipient. It may run in any thread.
     *
     * @throws SearchTooLargeException when the next ones take too long to find
     */
    public void stream(
            Descendants.Many descendants,
            Consumer<Pedigree.Entry> entries,
            Consumer<Pedigree.Link> links,
            Consumer<ReelBelow> reels) {
        QuarkusTransaction.joiningExisting()
                .timeout(Math.toIntExact(LONGEST_ANSWER.toSeconds()))
                .run(() -> lots.stream(descendants.plant(), descendants.lot(), entries, links, reels));
    }

    /** A reel with all that it descends from; one whose making was not reported stands alone. */
    public Pedigree ancestors(String reel, @Nullable String plantNamed) {
        return finder.find("reel", reel, plantNamed, lots::ancestorsOfReel);
    }

    /** Where a place on a reel is asked for: so far from the reel's beginning, with a tolerance to either side. */
    public record Place(double at, double within, String unit) {}

    /**
     * The stretches of a reel's ancestors that lie at a place on it, and where that is not known.
     *
     * @throws IntakeException when there is no such place on the reel
     */
    public PositionTrace position(String reel, @Nullable String plantNamed, Place place) {
        Pedigree pedigree = ancestors(reel, plantNamed);
        Faults faults = new Faults();
        Optional<PositionTrace> trace =
                faults.attempt("at", () -> PositionTrace.around(pedigree, place.at(), place.within(), place.unit()));
        faults.refuseIfAny();
        return trace.orElseThrow();
    }
}
