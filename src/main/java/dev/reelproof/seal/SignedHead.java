package dev.reelproof.seal;

/**
 * A head with its signature.
 *
 * @param keyId which key signed it: the id of {@link PublicSealKey}
 * @param signature Ed25519 over {@link TreeHead#bytes}, in hexadecimal
 */
public record SignedHead(TreeHead head, String keyId, String signature) {
    public SignedHead {
        Line.require("keyId", keyId);
        Line.require("signature", signature);
    }
}
