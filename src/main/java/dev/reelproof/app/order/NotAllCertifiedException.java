package dev.reelproof.app.order;

import java.util.List;
import java.util.stream.Collectors;

/** A collective certificate was asked for over reels that do not all have a current certificate. */
public class NotAllCertifiedException extends RuntimeException {
    /** So many reels are named in the message; all are in {@link #reels}. */
    private static final int MOST_NAMED = 10;

    private final transient List<Reel> reels;

    /**
     * A reel that has none.
     *
     * @param reel its number
     * @param why what it lacks, in words
     */
    public record Reel(String reel, String why) {}

    NotAllCertifiedException(String order, int asked, List<Reel> reels) {
        super("No collective certificate of order " + order + " was issued: " + reels.size() + " of " + asked
                + (asked == 1 ? " reel has" : " reels have") + " no current certificate. "
                + reels.stream()
                        .limit(MOST_NAMED)
                        .map(one -> one.reel() + ": " + one.why())
                        .collect(Collectors.joining(". "))
                + (reels.size() > MOST_NAMED ? ". And " + (reels.size() - MOST_NAMED) + " more." : "."));
        this.reels = List.copyOf(reels);
    }

    /** The reels, by number. */
    public List<Reel> reels() {
        return reels;
    }
}
