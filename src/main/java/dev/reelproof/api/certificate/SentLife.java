package dev.reelproof.api.certificate;

import dev.reelproof.app.certificate.ReissueCertificate;
import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.SentObject;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** Reads what is sent to issue a certificate again and to have it withdrawn; each refusal names the place. */
final class SentLife {
    private static final int LONGEST_REASON = 1_000;

    private SentLife() {}

    /** What is sent to issue a certificate again, for the description of the API. */
    @Schema(name = "CertificateReissue")
    record Reissue(String reason, @Nullable String customer, @Nullable String order, @Nullable String consignee) {}

    /** What is sent to have a certificate withdrawn, for the description of the API. */
    @Schema(name = "CertificateWithdrawal")
    record Withdrawal(String reason) {}

    /** @throws IntakeException when it is none */
    static ReissueCertificate.Request reissue(byte[] body) {
        Faults faults = new Faults();
        SentObject sent = SentObject.read("reissue", body, faults)
                .allow("reason", "customer", "order", "consignee")
                .require("reason");
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        Optional<String> customer = sent.text("customer", SentObject.LONGEST_NAME);
        Optional<String> order = sent.text("order", SentObject.LONGEST_NAME);
        Optional<String> consignee = sent.text("consignee", SentObject.LONGEST_NAME);
        faults.refuseIfAny();
        return new ReissueCertificate.Request(
                reason.orElseThrow(), customer.orElse(null), order.orElse(null), consignee.orElse(null));
    }

    /**
     * Reads why a certificate is to be withdrawn.
     *
     * @throws IntakeException when nothing says it
     */
    static String withdrawal(byte[] body) {
        Faults faults = new Faults();
        SentObject sent =
                SentObject.read("withdrawal", body, faults).allow("reason").require("reason");
        Optional<String> reason = sent.text("reason", LONGEST_REASON);
        faults.refuseIfAny();
        return reason.orElseThrow();
    }
}
