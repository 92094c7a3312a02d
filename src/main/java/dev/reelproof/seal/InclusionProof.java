package dev.reelproof.seal;

import java.util.List;
import java.util.Optional;

/**
 * Shows, without a database, that a leaf was in a plant's log when a head was signed.
 *
 * @param leaf the leaf, whole: its bytes can be made again from it
 * @param index its place in the log, from 0
 * @param path the hashes from it to the head's root, the lowest first
 */
public record InclusionProof(Leaf leaf, long index, List<Hash> path, SignedHead head) {
    public InclusionProof {
        path = List.copyOf(path);
        if (!leaf.plant().equals(head.head().plant())) {
            throw new IllegalArgumentException("a leaf of plant " + leaf.plant() + " is not in the log of "
                    + head.head().plant());
        }
    }

    /** Why it does not hold, in a sentence; empty when it holds. */
    public Optional<String> fault(PublicSealKey key) {
        TreeHead signed = head.head();
        if (!key.signed(head)) {
            return Optional.of("The log's head of " + signed.at() + " was not signed by the key " + key.id() + ".");
        }
        if (!InclusionPath.holds(leaf.hash(), index, signed.size(), path, signed.root())) {
            return Optional.of("The path does not lead from " + leaf.kind().word() + " " + leaf.id()
                    + " to the log's head of " + signed.at() + ".");
        }
        return Optional.empty();
    }
}
