package dev.reelproof.api;

import dev.reelproof.genealogy.Hold;
import dev.reelproof.intake.Fault;
import java.util.List;
import java.util.stream.Collectors;

/** A reel may have no certificate while it is on hold; the message says which holds and why. */
class HeldException extends RuntimeException {
    private final transient List<Hold> holds;

    /**
     * @param issued the number of the certificate that the reel's newest record has already; null when it has none
     */
    HeldException(String reel, List<Hold> holds, String issued) {
        super("Reel " + reel + " is on hold and gets no certificate: "
                + holds.stream().map(Hold::inWords).collect(Collectors.joining("; "))
                + (issued == null
                        ? ""
                        : ". Certificate " + issued + " was issued before; do not rely on it while the hold is open"));
        this.holds = List.copyOf(holds);
    }

    /** Each hold at its place. */
    List<Fault> faults() {
        return holds.stream()
                .map(hold -> new Fault("/api/v1/holds/" + hold.id(), hold.inWords()))
                .toList();
    }
}
