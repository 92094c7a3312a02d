package dev.reelproof.app.hold;

import dev.reelproof.genealogy.hold.Hold;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A reel is on hold, and so this cannot be done; the message says which holds and why. */
public class HeldException extends RuntimeException {
    private final transient List<Hold> holds;

    private HeldException(String message, List<Hold> holds) {
        super(message);
        this.holds = List.copyOf(holds);
    }

    /**
     * It gets no certificate.
     *
     * @param issued the number of the certificate that the reel's newest record has already, if it has one
     */
    public static HeldException noCertificate(String reel, List<Hold> holds, @Nullable String issued) {
        return new HeldException(
                "Reel " + reel + " is on hold and gets no certificate: " + inWords(holds)
                        + (issued == null
                                ? ""
                                : ". Certificate " + issued
                                        + " was issued before; do not rely on it while the hold is open"),
                holds);
    }

    /** It must not leave, unless it did. */
    public static HeldException notToBeShipped(String reel, List<Hold> holds) {
        return new HeldException(
                "Reel " + reel + " is on hold and must not leave: " + inWords(holds)
                        + ". Have it released; or, if it left already, say so in 'reason'",
                holds);
    }

    private static String inWords(List<Hold> holds) {
        return holds.stream().map(Hold::inWords).collect(Collectors.joining("; "));
    }

    /** The holds. */
    public List<Hold> holds() {
        return holds;
    }
}
