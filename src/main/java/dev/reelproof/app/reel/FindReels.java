package dev.reelproof.app.reel;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.hold.FindHolds;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.app.result.JudgedRecord;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.RegisteredLot;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.record.ReelLine;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.lot.Lots;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.result.Records;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Finds reels, and all that is known of one. */
@ApplicationScoped
public class FindReels {
    private final Plants plants;
    private final LimitSets limitSets;
    private final Reels reels;
    private final Lots lots;
    private final Records records;
    private final Certificates certificates;
    private final FindHolds holds;

    FindReels(
            Plants plants,
            LimitSets limitSets,
            Reels reels,
            Lots lots,
            Records records,
            Certificates certificates,
            FindHolds holds) {
        this.plants = plants;
        this.limitSets = limitSets;
        this.reels = reels;
        this.lots = lots;
        this.records = records;
        this.certificates = certificates;
        this.holds = holds;
    }

    /**
     * A reel that was found.
     *
     * @param line the reel with what its newest test came to
     * @param held whether it is under an open hold
     */
    public record FoundReel(ReelLine line, boolean held) {}

    /**
     * A reel with all that is known of it.
     *
     * @param registered the reel; empty when its making alone was reported
     * @param made the lot of kind reel that was reported; empty when the reel is registered
     * @param records its records, newest first
     * @param certificates its certificates, newest first
     * @param holds the open holds that it is under
     */
    public record ReelFile(
            Optional<RegisteredReel> registered,
            Optional<RegisteredLot> made,
            List<JudgedRecord> records,
            List<IssuedCertificate> certificates,
            List<Hold> holds) {}

    /**
     * Reels whose number, product, order or customer contains a text, whatever its case; the newest tested first.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param text what to look for; empty for all
     * @param limit how many at most
     * @throws IntakeException when it is not found in time which of them are on hold
     */
    @Transactional
    public List<FoundReel> search(@Nullable String plantNamed, String text, int limit) {
        String plant = plants.named(plantNamed, "plant");
        return withHolds(plant, reels.search(plant, text, limit));
    }

    /**
     * Those of some reels that are registered, the newest tested first.
     *
     * @throws IntakeException when it is not found in time which of them are on hold
     */
    @Transactional
    public List<FoundReel> among(String plant, Collection<String> numbers) {
        return withHolds(plant, reels.linesOf(plant, numbers));
    }

    private List<FoundReel> withHolds(String plant, List<ReelLine> found) {
        Set<String> held = inTime(() -> holds.heldAmong(
                plant, found.stream().map(line -> line.reel().id()).toList()));
        return found.stream()
                .map(line -> new FoundReel(line, held.contains(line.reel().id())))
                .toList();
    }

    /**
     * One reel with its records, certificates and holds.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @throws NothingThereException when it is neither registered nor was its making reported
     * @throws IntakeException when its holds are not found in time
     */
    @Transactional
    public ReelFile one(@Nullable String plantNamed, String number) {
        String plant = plants.named(plantNamed, "plant");
        Optional<RegisteredReel> registered = reels.byId(plant, number);
        Optional<RegisteredLot> made = registered.isPresent() ? Optional.empty() : Optional.of(made(plant, number));
        return new ReelFile(
                registered,
                made,
                records.ofReel(plant, number).stream()
                        .map(record -> new JudgedRecord(record, limitSets.of(record)))
                        .toList(),
                certificates.ofReel(plant, number),
                inTime(() -> holds.ofReel(plant, number)));
    }

    private RegisteredLot made(String plant, String number) {
        return LotId.named(number)
                .flatMap(id -> lots.byId(plant, id))
                .filter(lot -> lot.lot().kind() == LotKind.REEL)
                .orElseThrow(() ->
                        new NothingThereException("Reel '" + number + "' is not registered at plant " + plant + "."));
    }

    private static <T> T inTime(Supplier<T> search) {
        try {
            return search.get();
        } catch (SearchTooLargeException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, "query", e);
        }
    }
}
