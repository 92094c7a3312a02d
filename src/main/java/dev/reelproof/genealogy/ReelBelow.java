package dev.reelproof.genealogy;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A reel that descends from a lot, with what is registered of it and where it is.
 *
 * @param order the registered order; null when there is none
 * @param customer the registered customer; null when there is none
 * @param disposition what was told last of where it is; null when nothing was
 */
public record ReelBelow(
        LotId reel, @Nullable String order, @Nullable String customer, @Nullable Disposition disposition) {

    /** Where it is; one of which nothing was told is in stock. */
    public Disposition.State state() {
        return disposition == null ? Disposition.State.IN_STOCK : disposition.state();
    }

    /**
     * To whom it was shipped.
     *
     * @throws NullPointerException when it was not
     */
    public String recipient() {
        return Objects.requireNonNull(
                Objects.requireNonNull(disposition, "nothing was told of this reel")
                        .recipient(),
                "this reel was not shipped");
    }
}
