package dev.reelproof.seal;

import java.util.Optional;

/**
 * A proof with the public key that its head is checked by, as a certificate carries it: whoever has it can check it alone. That the key
 * is the plant's is another matter: its id can be compared with the one that the plant publishes.
 */
public record CarriedProof(InclusionProof proof, PublicSealKey key) {

    /** Why it does not hold, in a sentence; empty when it holds. */
    public Optional<String> fault() {
        return proof.fault(key);
    }

    /**
     * Why it does not show that a file is in the plant's log, in a sentence; empty when it does.
     *
     * @param sha256 of the file, in hexadecimal
     */
    public Optional<String> faultAsTo(String sha256) {
        Leaf leaf = proof.leaf();
        if (!(leaf.kind() == LeafKind.ATTACHMENT
                && leaf.id().equals(sha256)
                && leaf.equals(Leaf.ofAttachment(leaf.plant(), sha256)))) {
            return Optional.of(
                    "The proof is of " + leaf.kind().word() + " " + leaf.id() + ", not of the attached file.");
        }
        return fault();
    }
}
