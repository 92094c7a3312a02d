package dev.reelproof.pdf;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.reelproof.seal.CarriedProof;
import dev.reelproof.seal.Hash;
import dev.reelproof.seal.InclusionProof;
import dev.reelproof.seal.Leaf;
import dev.reelproof.seal.LeafKind;
import dev.reelproof.seal.PublicSealKey;
import dev.reelproof.seal.SignedHead;
import dev.reelproof.seal.TreeHead;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;

/** An inclusion proof as a certificate carries it: JSON, its keys in a fixed order. */
public final class InclusionProofJson {
    private static final ObjectMapper JSON = new ObjectMapper();

    private InclusionProofJson() {}

    /**
     * {@code {"leaf": {"kind", "plant", "id", "parts": [line], "hash"}, "index", "size", "path": [hash], "head": {"plant", "size", "root",
     * "at", "key", "signature"}, "publicKey"}}; hashes and the signature in hexadecimal, the key in Base64.
     */
    public static String write(CarriedProof carried) {
        InclusionProof proof = carried.proof();
        ObjectNode json = JSON.createObjectNode();
        ObjectNode leaf = json.putObject("leaf")
                .put("kind", proof.leaf().kind().word())
                .put("plant", proof.leaf().plant())
                .put("id", proof.leaf().id());
        ArrayNode parts = leaf.putArray("parts");
        proof.leaf().parts().forEach(parts::add);
        leaf.put("hash", proof.leaf().hash().hex());
        json.put("index", proof.index()).put("size", proof.head().head().size());
        ArrayNode path = json.putArray("path");
        proof.path().forEach(hash -> path.add(hash.hex()));
        TreeHead head = proof.head().head();
        json.putObject("head")
                .put("plant", head.plant())
                .put("size", head.size())
                .put("root", head.root().hex())
                .put("at", head.at().toString())
                .put("key", proof.head().keyId())
                .put("signature", proof.head().signature());
        json.put("publicKey", carried.key().base64());
        return json.toString();
    }

    /**
     * Reads what {@link #write} wrote. The leaf's hash is made again from the leaf, whatever the text says.
     *
     * @throws IllegalArgumentException when it is no such proof
     */
    public static CarriedProof read(String text) {
        try {
            JsonNode json = JSON.readTree(text);
            JsonNode leaf = json.required("leaf");
            JsonNode head = json.required("head");
            List<String> parts = new ArrayList<>();
            leaf.required("parts").forEach(part -> parts.add(part.asText()));
            List<Hash> path = new ArrayList<>();
            json.required("path").forEach(hash -> path.add(Hash.ofHex(hash.asText())));
            InclusionProof proof = new InclusionProof(
                    new Leaf(
                            LeafKind.named(leaf.required("kind").asText())
                                    .orElseThrow(() -> new IllegalArgumentException("unknown kind of leaf")),
                            leaf.required("plant").asText(),
                            leaf.required("id").asText(),
                            parts),
                    json.required("index").asLong(-1),
                    path,
                    new SignedHead(
                            new TreeHead(
                                    head.required("plant").asText(),
                                    head.required("size").asLong(-1),
                                    Hash.ofHex(head.required("root").asText()),
                                    Instant.parse(head.required("at").asText())),
                            head.required("key").asText(),
                            head.required("signature").asText()));
            return new CarriedProof(
                    proof, PublicSealKey.ofBase64(json.required("publicKey").asText()));
        } catch (JsonProcessingException | DateTimeParseException e) {
            throw new IllegalArgumentException("this is no proof of inclusion: " + e.getMessage(), e);
        }
    }
}
