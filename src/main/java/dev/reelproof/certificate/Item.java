package dev.reelproof.certificate;

import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.quantity.Length;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The item certified: one reel, and for whom.
 *
 * @param reel the reel's number
 * @param lengthSent the length as the bay sent it, in {@code lengthUnit}
 * @param lengthUnit its unit as sent
 * @param length the same length
 * @param lengthMarks the first and last length mark on its jacket; null when not stated
 * @param customer who ordered it; null when not known
 * @param order the order; null when not known
 * @param consignee to whom the goods go; null when that is not stated
 */
public record Item(
        String reel,
        double lengthSent,
        String lengthUnit,
        Length length,
        @Nullable LengthMarks lengthMarks,
        @Nullable String customer,
        @Nullable String order,
        @Nullable String consignee) {

    public Item {
        if (reel == null || reel.isBlank()) {
            throw new IllegalArgumentException("a certificate needs the reel's number");
        }
        Objects.requireNonNull(lengthUnit, "a length needs its unit");
        Objects.requireNonNull(length, "a certificate needs the reel's length");
    }
}
