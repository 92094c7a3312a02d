package dev.reelproof.api.reel;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.api.Quantity;
import dev.reelproof.api.certificate.CertificateAnswer;
import dev.reelproof.api.hold.HoldAnswer;
import dev.reelproof.api.result.RecordAnswer;
import dev.reelproof.app.reel.FindReels;
import dev.reelproof.app.reel.FindReels.FoundReel;
import dev.reelproof.app.reel.FindReels.ReelFile;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.RegisteredLot;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.record.ReelLine;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.wording.Figures;
import dev.reelproof.wording.Look;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * A reel, as the HTTP contract has it; with its records where these were asked for.
 *
 * @param held the ids of the open holds that it is under
 * @param holds those holds
 */
public record ReelAnswer(
        String reel,
        String plant,
        @Nullable String product,
        Quantity length,
        @Schema(nullable = true, description = "the first and last length mark on its jacket; null when not registered")
                @Nullable
                LengthMarksAnswer lengthMarks,
        @Nullable String order,
        @Nullable String customer,
        OffsetDateTime registered,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<RecordAnswer> records,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<CertificateAnswer> certificates,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<String> held,
        @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable List<HoldAnswer> holds,
        @Schema(nullable = true, description = "that a reel which passed is on hold; null unless it is so") @Nullable
                String heldSentence,
        @Schema(
                        nullable = true,
                        description =
                                "why it may not go while a concession of it is open or not done; null unless it is so")
                @Nullable
                String concessionSentence,
        @Schema(description = "whether a further test needs a reason") boolean asksRetestReason,
        String printedLength,
        @Schema(nullable = true, description = "the length marks in words; null when not registered") @Nullable
                String printedLengthMarks) {

    /** A reel in a list. */
    @Schema(name = "ReelLine")
    public record Line(
            String reel,
            String plant,
            String product,
            Quantity length,
            @Nullable String order,
            @Nullable String customer,
            @Nullable String verdict,
            @Nullable UUID record,
            @Schema(nullable = true, description = "when its newest record was received") @Nullable
                    OffsetDateTime tested,
            @Schema(nullable = true, description = "when the test of its newest record ended") @Nullable
                    OffsetDateTime finished,
            @Schema(description = "whether it is under an open hold") boolean held,
            @Schema(description = "whether it passed after a failure and counts only once an engineer has accepted it")
                    boolean awaitsEngineer,
            @Schema(description = "whether a concession of it is open, or it was shortened and not tested since")
                    boolean concessionUnfinished,
            @Schema(nullable = true, description = "the verdict in words; null when not tested") @Nullable
                    String verdictText,
            @Schema(nullable = true, description = "its look; null when not tested") @Nullable String look,
            String printedLength) {

        public static Line of(FoundReel found) {
            ReelLine line = found.line();
            RegisteredReel reel = line.reel();
            Optional<Verdict> verdict = Optional.ofNullable(line.verdict());
            return new Line(
                    reel.id(),
                    reel.plant(),
                    reel.product(),
                    new Quantity(reel.sentLength(), reel.sentUnit()),
                    reel.order(),
                    reel.customer(),
                    line.verdict() == null ? null : line.verdict().word(),
                    line.record(),
                    line.received(),
                    line.finished(),
                    found.held(),
                    found.awaitsEngineer(),
                    found.standing().isUnfinished(),
                    verdict.map(one -> Wording.english().verdict(one, line.conditional()))
                            .orElse(null),
                    verdict.map(one -> Look.of(one, line.conditional()).word()).orElse(null),
                    Figures.length(reel.sentLength(), reel.sentUnit()));
        }
    }

    /** A list of reels. */
    @Schema(name = "ReelLines")
    record Lines(
            @Schema(description = "what was looked for: the query without what a scanner puts around it") String query,
            List<Line> reels) {

        static Lines of(FindReels.Found found) {
            return new Lines(found.text(), found.reels().stream().map(Line::of).toList());
        }
    }

    /** A reel with all that is known of it. */
    static ReelAnswer of(ReelFile file) {
        List<HoldAnswer> holds =
                file.holds().stream().map(hold -> HoldAnswer.of(hold, null)).toList();
        return file.made()
                .map(made -> ofMade(made, holds))
                .orElseGet(() -> of(
                        file.registered().orElseThrow(),
                        file.records().stream()
                                .map(judged -> RecordAnswer.of(judged, Wording.english()))
                                .toList(),
                        file.asksRetestReason(),
                        file.certificates().stream().map(CertificateAnswer::of).toList(),
                        holds,
                        file.unfinished()
                                .flatMap(Wording.english()::notToBeShipped)
                                .orElse(null)));
    }

    /** A reel as registered, without its records, certificates and holds. */
    static ReelAnswer of(RegisteredReel reel) {
        return of(reel, null, false, null, null, null);
    }

    /** A reel whose making alone was reported: it has no product and no tests yet. */
    private static ReelAnswer ofMade(RegisteredLot made, List<HoldAnswer> holds) {
        Lot lot = made.lot();
        return new ReelAnswer(
                lot.id().value(),
                lot.plant(),
                null,
                new Quantity(lot.quantity().value(), lot.quantity().unit()),
                null,
                null,
                null,
                made.registered(),
                List.of(),
                List.of(),
                holds.stream().map(HoldAnswer::id).toList(),
                holds,
                null,
                null,
                false,
                Figures.length(lot.quantity().value(), lot.quantity().unit()),
                null);
    }

    private static ReelAnswer of(
            RegisteredReel reel,
            @Nullable List<RecordAnswer> records,
            boolean asksRetestReason,
            @Nullable List<CertificateAnswer> certificates,
            @Nullable List<HoldAnswer> holds,
            @Nullable String concessionSentence) {
        return new ReelAnswer(
                reel.id(),
                reel.plant(),
                reel.product(),
                new Quantity(reel.sentLength(), reel.sentUnit()),
                LengthMarksAnswer.of(reel.lengthMarks()),
                reel.order(),
                reel.customer(),
                reel.registered(),
                records,
                certificates,
                holds == null ? null : holds.stream().map(HoldAnswer::id).toList(),
                holds,
                isHeldThoughAccepted(records, holds) ? Wording.english().heldThoughAccepted() : null,
                concessionSentence,
                asksRetestReason,
                Figures.length(reel.sentLength(), reel.sentUnit()),
                printed(reel.lengthMarks()));
    }

    private static @Nullable String printed(@Nullable LengthMarks marks) {
        return marks == null ? null : Wording.english().lengthMarks(marks.first(), marks.last(), marks.unit());
    }

    /** Whether its newest test was passed, and a hold keeps it. */
    private static boolean isHeldThoughAccepted(
            @Nullable List<RecordAnswer> records, @Nullable List<HoldAnswer> holds) {
        return records != null
                && !records.isEmpty()
                && records.get(0).verdict().equals(Verdict.ACCEPTED.word())
                && holds != null
                && !holds.isEmpty();
    }
}
