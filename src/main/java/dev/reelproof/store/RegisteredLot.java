package dev.reelproof.store;

import dev.reelproof.genealogy.Lot;
import java.time.OffsetDateTime;

/**
 * A lot as registered.
 *
 * @param lot the lot
 * @param registered when it was registered, in UTC
 */
public record RegisteredLot(Lot lot, OffsetDateTime registered) {}
