package dev.reelproof.api.concession;

import dev.reelproof.api.Quantity;
import dev.reelproof.app.concession.RequestConcession.Asked;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import dev.reelproof.record.concession.Terms;
import java.util.Optional;

/** Reads what is sent to ask for a concession and to decide on one; each refusal names the place. */
final class SentConcession {
    private static final int LONGEST_KIND = 40;
    private static final int LONGEST_REASON = 1_000;
    private static final String PRODUCT = "product";
    private static final String LENGTH = "length";

    private SentConcession() {}

    /** @throws IntakeException when it is no request */
    static Asked asked(byte[] body) {
        Faults faults = new Faults();
        SentObject sent = SentObject.read("concession", body, faults)
                .allow("kind", PRODUCT, LENGTH, "reason")
                .require("kind", "reason");
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        Optional<Terms> terms = sent.text("kind", LONGEST_KIND)
                .flatMap(word -> faults.attempt(sent.pointer("kind"), () -> Terms.Kind.named(word)))
                .flatMap(kind -> terms(kind, sent));
        faults.refuseIfAny();
        return new Asked(terms.orElseThrow(), reason.orElseThrow());
    }

    private static Optional<Terms> terms(Terms.Kind kind, SentObject sent) {
        return switch (kind) {
            case USE_AS_IS -> {
                refuse(PRODUCT, kind, sent);
                refuse(LENGTH, kind, sent);
                yield Optional.of(new Terms.UseAsIs());
            }
            case REGRADE -> {
                refuse(LENGTH, kind, sent);
                sent.require(PRODUCT);
                yield sent.identifier(PRODUCT).map(Terms.Regrade::new);
            }
            case SHORTEN -> {
                refuse(PRODUCT, kind, sent);
                sent.require(LENGTH);
                yield sent.quantity(LENGTH, Quantity::new).flatMap(length -> sent.faults()
                        .attempt(sent.pointer(LENGTH), () -> new Terms.Shorten(length.value(), length.unit())));
            }
        };
    }

    private static void refuse(String key, Terms.Kind kind, SentObject sent) {
        if (sent.has(key)) {
            sent.fault(key, "a concession of kind " + kind.word() + " has no " + key);
        }
    }

    /**
     * Why it is decided so.
     *
     * @throws IntakeException when no reason is given
     */
    static String reason(byte[] body) {
        Faults faults = new Faults();
        SentObject sent =
                SentObject.read("decision", body, faults).allow("reason").require("reason");
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        faults.refuseIfAny();
        return reason.orElseThrow();
    }
}
