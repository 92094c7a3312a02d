package dev.reelproof.genealogy;

import java.time.OffsetDateTime;
import java.util.List;

/**
 * A lot as registered.
 *
 * @param lot the lot
 * @param registered when it was registered, in UTC
 * @param implausible what can hardly be so in it; empty when all fits
 */
public record RegisteredLot(Lot lot, OffsetDateTime registered, List<Implausibility> implausible) {

    public RegisteredLot {
        implausible = List.copyOf(implausible);
    }
}
