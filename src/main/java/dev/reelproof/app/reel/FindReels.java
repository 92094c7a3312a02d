package dev.reelproof.app.reel;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.certificate.FindLives;
import dev.reelproof.app.certificate.LivingCertificate;
import dev.reelproof.app.concession.ConcessionCheck;
import dev.reelproof.app.hold.FindHolds;
import dev.reelproof.app.result.JudgedRecord;
import dev.reelproof.app.result.JudgedRecords;
import dev.reelproof.app.result.TestRules;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.RegisteredLot;
import dev.reelproof.genealogy.hold.Hold;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.ReelLine;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.RetestRule;
import dev.reelproof.record.ScannedCode;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.store.SearchTooLargeException;
import dev.reelproof.store.certificate.Certificates;
import dev.reelproof.store.lot.Lots;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.result.AttemptHistories;
import dev.reelproof.store.result.Records;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Finds reels, and all that is known of one. */
@ApplicationScoped
public class FindReels {
    private final Plants plants;
    private final JudgedRecords judgedRecords;
    private final AttemptHistories histories;
    private final TestRules rules;
    private final Reels reels;
    private final Lots lots;
    private final Records records;
    private final Certificates certificates;
    private final FindLives lives;
    private final FindHolds holds;
    private final ConcessionCheck concessions;

    FindReels(
            Plants plants,
            JudgedRecords judgedRecords,
            AttemptHistories histories,
            TestRules rules,
            Reels reels,
            Lots lots,
            Records records,
            Certificates certificates,
            FindLives lives,
            FindHolds holds,
            ConcessionCheck concessions) {
        this.plants = plants;
        this.judgedRecords = judgedRecords;
        this.histories = histories;
        this.rules = rules;
        this.reels = reels;
        this.lots = lots;
        this.records = records;
        this.certificates = certificates;
        this.lives = lives;
        this.holds = holds;
        this.concessions = concessions;
    }

    /**
     * A reel that was found.
     *
     * @param line the reel with what its newest test came to
     * @param held whether it is under an open hold
     * @param awaitsEngineer whether its newest test passed, but counts only once an engineer has accepted it
     * @param standing what its concessions mean for it
     */
    public record FoundReel(ReelLine line, boolean held, boolean awaitsEngineer, ConcessionStanding standing) {}

    /**
     * What a search found.
     *
     * @param text what was looked for: what was sent, without what a scanner puts around it
     * @param reels the reels
     */
    public record Found(String text, List<FoundReel> reels) {}

    /**
     * A reel with all that is known of it.
     *
     * @param registered the reel; empty when its making alone was reported
     * @param made the lot of kind reel that was reported; empty when the reel is registered
     * @param records its records, the newest in the order of test first
     * @param asksRetestReason whether a further test needs a reason
     * @param certificates its certificates, newest first
     * @param holds the open holds that it is under
     * @param unfinished what its concessions mean for it while one is open or not done; else empty
     */
    public record ReelFile(
            Optional<RegisteredReel> registered,
            Optional<RegisteredLot> made,
            List<JudgedRecord> records,
            boolean asksRetestReason,
            List<LivingCertificate> certificates,
            List<Hold> holds,
            Optional<ConcessionStanding> unfinished) {}

    /**
     * Reels whose number, product, order or customer contains a text, whatever its case; the newest tested first.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param sent what to look for, as scanned or typed; empty for all
     * @param limit how many at most
     * @throws IntakeException when it is not found in time which of them are on hold
     */
    @Transactional
    public Found search(@Nullable String plantNamed, String sent, int limit) {
        String plant = plants.named(plantNamed, "plant");
        String text = ScannedCode.of(sent);
        return new Found(text, withTheirState(plant, reels.search(plant, text, limit)));
    }

    /**
     * Those of some reels that are registered, the newest tested first.
     *
     * @throws IntakeException when it is not found in time which of them are on hold
     */
    @Transactional
    public List<FoundReel> among(String plant, Collection<String> numbers) {
        return withTheirState(plant, reels.linesOf(plant, numbers));
    }

    private List<FoundReel> withTheirState(String plant, List<ReelLine> found) {
        List<String> numbers = found.stream().map(line -> line.reel().id()).toList();
        Set<String> held = inTime(() -> holds.heldAmong(plant, numbers));
        Set<String> awaiting = awaitingEngineer(plant, numbers);
        Map<String, ConcessionStanding> standings = concessions.standings(plant, numbers);
        return found.stream()
                .map(line -> new FoundReel(
                        line,
                        held.contains(line.reel().id()),
                        awaiting.contains(line.reel().id()),
                        standings.getOrDefault(line.reel().id(), ConcessionStanding.NONE)))
                .toList();
    }

    private Set<String> awaitingEngineer(String plant, List<String> numbers) {
        RetestRule rule = rules.retests(plant);
        return rule.asksEngineer()
                ? histories.of(plant, numbers).entrySet().stream()
                        .filter(entry -> rule.awaitsEngineer(entry.getValue()))
                        .map(Map.Entry::getKey)
                        .collect(Collectors.toSet())
                : Set.of();
    }

    /**
     * One reel with its records, certificates and holds.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param scanned its number, as scanned or typed
     * @throws NothingThereException when it is neither registered nor was its making reported
     * @throws IntakeException when its holds are not found in time
     */
    @Transactional
    public ReelFile one(@Nullable String plantNamed, String scanned) {
        String number = ScannedCode.of(scanned);
        String plant = plants.named(plantNamed, "plant");
        Optional<RegisteredReel> registered = reels.byId(plant, number);
        Optional<RegisteredLot> made = registered.isPresent() ? Optional.empty() : Optional.of(made(plant, number));
        AttemptHistory history = histories.of(plant, number);
        return new ReelFile(
                registered,
                made,
                judgedRecords.ofReel(records.ofReel(plant, number), history),
                history.count() > 0 && rules.retests(plant).asksReason(),
                lives.of(plant, certificates.ofReel(plant, number)),
                inTime(() -> holds.ofReel(plant, number)),
                concessions.unfinished(plant, number));
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
