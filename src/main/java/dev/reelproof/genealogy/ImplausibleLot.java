package dev.reelproof.genealogy;

import java.time.OffsetDateTime;
import java.util.List;

/**
 * A lot in which something can hardly be so.
 *
 * @param registered when it was registered, or a later one that does not fit it
 */
public record ImplausibleLot(LotId lot, OffsetDateTime registered, List<Implausibility> implausible) {}
