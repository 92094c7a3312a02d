package dev.reelproof.genealogy;

import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/**
 * Where a reel went, as somebody told.
 *
 * @param reel the reel
 * @param state where it is
 * @param recipient to whom it was shipped; null when it was not
 * @param reason why; null when not said
 * @param actor who told it
 * @param at when it was told, in UTC
 */
public record Disposition(
        LotId reel, State state, @Nullable String recipient, @Nullable String reason, String actor, OffsetDateTime at) {

    public Disposition {
        if (reel == null || state == null || at == null) {
            throw new IllegalArgumentException("where a reel is needs the reel, the state and the time");
        }
        if (actor == null || actor.isBlank()) {
            throw new IllegalArgumentException("where reel " + reel + " is needs who told it");
        }
        if ((state == State.SHIPPED) != (recipient != null)) {
            throw new IllegalArgumentException(
                    "reel " + reel + " is said to be " + state.word() + " and to have gone to " + recipient
                            + "; what was shipped went to somebody, and nothing else did");
        }
    }

    /** Where a reel can be. */
    public enum State {
        IN_STOCK("in-stock"),
        SHIPPED("shipped"),
        SCRAPPED("scrapped");

        private final String word;

        State(String word) {
            this.word = word;
        }

        /** The state as requests and answers spell it. */
        public String word() {
            return word;
        }

        /**
         * The state of that word.
         *
         * @throws IllegalArgumentException when there is none
         */
        public static State named(String word) {
            for (State state : values()) {
                if (state.word.equals(word)) {
                    return state;
                }
            }
            throw new IllegalArgumentException("unknown state '" + word + "'; a reel is in-stock, shipped or scrapped");
        }
    }
}
