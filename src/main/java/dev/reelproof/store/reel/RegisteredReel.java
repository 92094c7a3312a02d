package dev.reelproof.store.reel;

import dev.reelproof.quantity.Length;
import java.time.OffsetDateTime;

/**
 * A reel as registered.
 *
 * @param plant the plant that made it
 * @param id the reel's number, unique within the plant
 * @param product the code of its product
 * @param length its length
 * @param sentLength the length as sent, in {@code sentUnit}
 * @param sentUnit the unit of the length as sent
 * @param order the customer order; null when none
 * @param customer the customer; null when none
 * @param registered when it was first registered
 */
public record RegisteredReel(
        String plant,
        String id,
        String product,
        Length length,
        double sentLength,
        String sentUnit,
        String order,
        String customer,
        OffsetDateTime registered) {}
