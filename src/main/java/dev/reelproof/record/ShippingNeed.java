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
    ENGINEER("engineer"),
    CONCESSION("concession"),
    RELEASE("release"),
    NEW_TEST("new-test"),
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

    /** What a reel has of a certificate. */
    public enum Paper {
        /** None that counts for its newest test. */
        NONE,
        /** That of its newest test was withdrawn: this test gets no other. */
        WITHDRAWN,
        /** One that nobody may rely on now. */
        IN_QUESTION,
        CURRENT
    }

    /**
     * What is missing, the first to be done first; nothing when the reel may be shipped.
     *
     * @param verdict what its newest test came to; null when it was never tested
     * @param usedAsIs whether an approved concession lets it be used as that test found it
     * @param concessionUnfinished whether a concession of it is not decided, or not done
     * @param awaitsEngineer whether that counts only once an engineer has accepted it
     * @param isHeld whether it is on hold
     * @param paper its certificate
     */
    public static List<ShippingNeed> of(
            @Nullable Verdict verdict,
            boolean usedAsIs,
            boolean concessionUnfinished,
            boolean awaitsEngineer,
            boolean isHeld,
            Paper paper) {
        List<ShippingNeed> needs = new ArrayList<>();
        if (verdict == null) {
            needs.add(TEST);
        } else if (verdict == Verdict.INCOMPLETE) {
            needs.add(COMPLETE_TEST);
        } else if (verdict == Verdict.REJECTED && !usedAsIs) {
            needs.add(PASSED_TEST);
        } else if (awaitsEngineer) {
            needs.add(ENGINEER);
        }
        if (concessionUnfinished) {
            needs.add(CONCESSION);
        }
        if (isHeld) {
            needs.add(RELEASE);
        }
        switch (paper) {
            case NONE -> needs.add(CERTIFICATE);
            case WITHDRAWN -> needs.add(NEW_TEST);
            case IN_QUESTION -> {
                if (needs.isEmpty()) {
                    needs.add(CURRENT_CERTIFICATE);
                }
            }
            case CURRENT -> {}
        }
        return List.copyOf(needs);
    }
}
