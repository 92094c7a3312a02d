package dev.reelproof.api.reel;

import com.fasterxml.jackson.annotation.JsonInclude;
import dev.reelproof.api.Quantity;
import dev.reelproof.api.certificate.CertificateAnswer;
import dev.reelproof.api.hold.HoldAnswer;
import dev.reelproof.api.result.RecordAnswer;
import dev.reelproof.app.reel.FindReels.FoundReel;
import dev.reelproof.app.reel.FindReels.ReelFile;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.store.lot.RegisteredLot;
import dev.reelproof.store.reel.ReelLine;
import dev.reelproof.store.reel.RegisteredReel;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/**
 * A reel, as the HTTP contract has it; with its records where these were asked for.
 *
 * @param held the ids of the open holds that it is under
 * @param holds those holds
 */
record ReelAnswer(
        String reel,
        String plant,
        String product,
        Quantity length,
        String order,
        String customer,
        OffsetDateTime registered,
        @JsonInclude(JsonInclude.Include.NON_NULL) List<RecordAnswer> records,
        @JsonInclude(JsonInclude.Include.NON_NULL) List<CertificateAnswer> certificates,
        @JsonInclude(JsonInclude.Include.NON_NULL) List<String> held,
        @JsonInclude(JsonInclude.Include.NON_NULL) List<HoldAnswer> holds) {

    /** A reel in a list. */
    record Line(
            String reel,
            String plant,
            String product,
            Quantity length,
            String order,
            String customer,
            String verdict,
            UUID record,
            @Schema(nullable = true, description = "when its newest record was received") OffsetDateTime tested,
            @Schema(nullable = true, description = "when the test of its newest record ended") OffsetDateTime finished,
            @Schema(description = "whether it is under an open hold") boolean held) {

        static Line of(FoundReel found) {
            ReelLine line = found.line();
            RegisteredReel reel = line.reel();
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
                    found.held());
        }
    }

    /** A list of reels. */
    record Lines(List<Line> reels) {}

    /** A reel with all that is known of it. */
    static ReelAnswer of(ReelFile file) {
        List<HoldAnswer> holds =
                file.holds().stream().map(hold -> HoldAnswer.of(hold, null)).toList();
        return file.made()
                .map(made -> ofMade(made, holds))
                .orElseGet(() -> of(
                        file.registered().orElseThrow(),
                        file.records().stream()
                                .map(judged -> RecordAnswer.of(judged.record(), judged.limitSet()))
                                .toList(),
                        file.certificates().stream().map(CertificateAnswer::of).toList(),
                        holds));
    }

    /** A reel as registered, without its records, certificates and holds. */
    static ReelAnswer of(RegisteredReel reel) {
        return of(reel, null, null, null);
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
                made.registered(),
                List.of(),
                List.of(),
                holds.stream().map(HoldAnswer::id).toList(),
                holds);
    }

    private static ReelAnswer of(
            RegisteredReel reel,
            List<RecordAnswer> records,
            List<CertificateAnswer> certificates,
            List<HoldAnswer> holds) {
        return new ReelAnswer(
                reel.id(),
                reel.plant(),
                reel.product(),
                new Quantity(reel.sentLength(), reel.sentUnit()),
                reel.order(),
                reel.customer(),
                reel.registered(),
                records,
                certificates,
                holds == null ? null : holds.stream().map(HoldAnswer::id).toList(),
                holds);
    }
}
