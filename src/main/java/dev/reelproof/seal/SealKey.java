package dev.reelproof.seal;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.time.Instant;
import java.util.Base64;
import java.util.HexFormat;

/** The key that signs heads: Ed25519 (RFC 8032), by the JDK. */
public final class SealKey {
    private final PrivateKey secret;
    private final PublicSealKey open;

    private SealKey(PrivateKey secret, PublicSealKey open) {
        this.secret = secret;
        this.open = open;
    }

    /** A new key. */
    public static SealKey make() {
        try {
            KeyPair pair = KeyPairGenerator.getInstance(PublicSealKey.ALGORITHM).generateKeyPair();
            return new SealKey(pair.getPrivate(), PublicSealKey.of(pair.getPublic()));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform from 15 on has Ed25519", e);
        }
    }

    /**
     * The key that its encodings give.
     *
     * @param secret PKCS #8, in Base64
     * @param open SubjectPublicKeyInfo, in Base64
     * @throws IllegalArgumentException when they are no Ed25519 keys, or do not belong together
     */
    public static SealKey ofBase64(String secret, String open) {
        SealKey key;
        try {
            byte[] encoded = Base64.getMimeDecoder().decode(secret);
            key = new SealKey(
                    KeyFactory.getInstance(PublicSealKey.ALGORITHM).generatePrivate(new PKCS8EncodedKeySpec(encoded)),
                    PublicSealKey.ofBase64(open));
        } catch (GeneralSecurityException e) {
            throw new IllegalArgumentException("this is no private key of Ed25519: " + e.getMessage(), e);
        }
        TreeHead trial = new TreeHead("trial", 0, TreeHashing.EMPTY, Instant.EPOCH);
        if (!key.open().signed(key.sign(trial))) {
            throw new IllegalArgumentException("the private and the public key do not belong together");
        }
        return key;
    }

    /** The public half. */
    public PublicSealKey open() {
        return open;
    }

    /** The private half: PKCS #8, in Base64 of one line. */
    public String secretBase64() {
        return Base64.getEncoder().encodeToString(secret.getEncoded());
    }

    /** Signs a head. */
    public SignedHead sign(TreeHead head) {
        try {
            Signature signature = Signature.getInstance(PublicSealKey.ALGORITHM);
            signature.initSign(secret);
            signature.update(head.bytes());
            return new SignedHead(head, open.id(), HexFormat.of().formatHex(signature.sign()));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("the head of " + head.plant() + " could not be signed", e);
        }
    }
}
