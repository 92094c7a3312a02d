package dev.reelproof.genealogy;

/**
 * A reel that descends from a lot, with what is registered of it and where it is.
 *
 * @param order the registered order; null when there is none
 * @param customer the registered customer; null when there is none
 * @param disposition what was told last of where it is; null when nothing was
 */
public record ReelBelow(LotId reel, String order, String customer, Disposition disposition) {

    /** Where it is; one of which nothing was told is in stock. */
    public Disposition.State state() {
        return disposition == null ? Disposition.State.IN_STOCK : disposition.state();
    }
}
