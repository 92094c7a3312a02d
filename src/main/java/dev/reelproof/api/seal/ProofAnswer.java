package dev.reelproof.api.seal;

import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** The shape of a proof, for the description of the API: the text itself is the one that a certificate carries. */
@Schema(name = "InclusionProof")
record ProofAnswer(
        Leaf leaf,
        @Schema(description = "the leaf's place, from 0") long index,
        @Schema(description = "how many leaves the log had") long size,
        @Schema(description = "the hashes to the root, the lowest first") List<String> path,
        SealResource.Head head,
        @Schema(description = "the log's public key: SubjectPublicKeyInfo in Base64") String publicKey) {

    /** What the leaf says. */
    @Schema(name = "LogLeaf")
    record Leaf(
            String kind,
            String plant,
            String id,
            @Schema(description = "one line a row: table and SHA-256") List<String> parts,
            @Schema(description = "SHA-256 of 0x00 and the lines 'reelproof leaf 1', kind, plant, id, parts")
                    String hash) {}
}
