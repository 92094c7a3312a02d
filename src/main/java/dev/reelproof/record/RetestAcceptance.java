package dev.reelproof.record;

import java.time.OffsetDateTime;

/**
 * That an engineer accepted a pass which the plant's rule on retests did not let count by itself.
 *
 * @param acceptedBy the account of the engineer
 * @param at when
 * @param reason why, as the engineer put it
 */
public record RetestAcceptance(String acceptedBy, OffsetDateTime at, String reason) {

    public RetestAcceptance {
        if (acceptedBy == null || acceptedBy.isBlank() || reason == null || reason.isBlank() || at == null) {
            throw new IllegalArgumentException("the acceptance of a retest needs a person, a time and a reason");
        }
    }
}
