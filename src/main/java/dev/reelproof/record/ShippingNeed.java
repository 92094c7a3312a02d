package dev.reelproof.record;

import dev.reelproof.judgement.Verdict;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What a reel lacks before it may be shipped with its certificate. */
public enum ShippingNeed {
    TEST("test"),
    COMPLETE_TEST("complete-test"),
    PASSED_TEST("passed-test"),
    RELEASE("release"),
    CERTIFICATE("certificate"),
    CURRENT_CERTIFICATE("current-certificate");

    private final String word;

    ShippingNeed(String word) {
        this.word = word;
    }

    /** The need as answers spell it. */
    public String word() {
        return word;
    }

    /**
     * What is missing, the first to be done first; nothing when the reel may be shipped.
     *
     * @param verdict what its newest test came to; null when it was never tested
     * @param isHeld whether it is on hold
     * @param hasCertificate whether it has a certificate that was not replaced
     * @param isCurrent whether that one may be relied on
     */
    public static List<ShippingNeed> of(
            @Nullable Verdict verdict, boolean isHeld, boolean hasCertificate, boolean isCurrent) {
        List<ShippingNeed> needs = new ArrayList<>();
        if (verdict == null) {
            needs.add(TEST);
        } else if (verdict == Verdict.INCOMPLETE) {
            needs.add(COMPLETE_TEST);
        } else if (verdict == Verdict.REJECTED) {
            needs.add(PASSED_TEST);
        }
        if (isHeld) {
            needs.add(RELEASE);
        }
        if (!hasCertificate) {
            needs.add(CERTIFICATE);
        } else if (!isCurrent && needs.isEmpty()) {
            needs.add(CURRENT_CERTIFICATE);
        }
        return List.copyOf(needs);
    }
}
