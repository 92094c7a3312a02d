package dev.reelproof.record;

import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.quantity.Length;
import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/**
 * A reel as registered.
 *
 * @param plant the plant that made it
 * @param id the reel's number, unique within the plant
 * @param product the code of its product
 * @param length its length
 * @param sentLength the length as sent, in {@code sentUnit}; positive and finite
 * @param sentUnit the unit of the length as sent
 * @param lengthMarks the first and last length mark on its jacket, where stated
 * @param order the customer order, if any
 * @param customer the customer, if any
 * @param registered when it was first registered
 */
public record RegisteredReel(
        String plant,
        String id,
        String product,
        Length length,
        double sentLength,
        String sentUnit,
        @Nullable LengthMarks lengthMarks,
        @Nullable String order,
        @Nullable String customer,
        OffsetDateTime registered) {

    public RegisteredReel {
        requireText("plant", plant);
        requireText("number", id);
        requireText("product", product);
        requireText("unit of length", sentUnit);
        if (length == null || registered == null) {
            throw new IllegalArgumentException("reel " + id + " needs a length and the time of its registration");
        }
        if (!(sentLength > 0 && Double.isFinite(sentLength))) {
            throw new IllegalArgumentException(
                    "the length of reel " + id + " must be positive and finite, not " + sentLength + " " + sentUnit);
        }
    }

    private static void requireText(String what, String text) {
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException("a reel needs a " + what);
        }
    }

    /** The reel with another customer and order. */
    public RegisteredReel soldTo(@Nullable String newCustomer, @Nullable String newOrder) {
        return new RegisteredReel(
                plant, id, product, length, sentLength, sentUnit, lengthMarks, newOrder, newCustomer, registered);
    }

    /** The reel as one of another product. */
    public RegisteredReel as(String newProduct) {
        return new RegisteredReel(
                plant, id, newProduct, length, sentLength, sentUnit, lengthMarks, order, customer, registered);
    }

    /**
     * The reel cut to another length. Its length marks hold no longer: nobody knows at which end it was cut.
     *
     * @param value the new length, in {@code unit}
     * @param unit a unit of length
     */
    public RegisteredReel cutTo(double value, String unit) {
        return new RegisteredReel(
                plant, id, product, Length.of(value, unit), value, unit, null, order, customer, registered);
    }
}
