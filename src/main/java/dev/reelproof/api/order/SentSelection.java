package dev.reelproof.api.order;

import dev.reelproof.app.order.IssueCollective;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** Reads for which reels of an order a collective certificate is asked; nothing sent means all. */
final class SentSelection {
    private static final String REELS = "reels";

    private SentSelection() {}

    /** What may be sent, for the description of the API. */
    @Schema(name = "CollectiveCertificateSelection")
    record Selection(
            @Schema(description = "their numbers, at most 200; all reels of the order when left out")
                    List<String> reels) {}

    /** @throws IntakeException when it is none */
    static List<String> of(byte[] body) {
        if (body.length == 0) {
            return List.of();
        }
        Faults faults = new Faults();
        SentObject sent = SentObject.read("selection", body, faults).allow(REELS);
        List<String> reels = sent.has(REELS) ? sent.texts(REELS, SentObject.LONGEST_NAME) : List.of();
        if (sent.has(REELS) && reels.isEmpty()) {
            sent.fault(REELS, "must name reels; leave it out for all reels of the order");
        }
        if (!(reels.size() <= IssueCollective.MOST_REELS)) {
            sent.fault(REELS, "must name at most " + IssueCollective.MOST_REELS + " reels, not " + reels.size());
        }
        faults.refuseIfAny();
        return reels;
    }
}
