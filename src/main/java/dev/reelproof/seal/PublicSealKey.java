package dev.reelproof.seal;

import dev.reelproof.digest.Sha256;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import java.util.HexFormat;

/** The public half of the key that signs heads: Ed25519 (RFC 8032), by the JDK. */
public final class PublicSealKey {
    static final String ALGORITHM = "Ed25519";

    private final PublicKey key;

    private PublicSealKey(PublicKey key) {
        this.key = key;
    }

    static PublicSealKey of(PublicKey key) {
        return new PublicSealKey(key);
    }

    /**
     * The key that its encoding gives.
     *
     * @param base64 SubjectPublicKeyInfo (X.509), as {@link #base64} writes it
     * @throws IllegalArgumentException when that is no Ed25519 key
     */
    public static PublicSealKey ofBase64(String base64) {
        try {
            byte[] encoded = Base64.getMimeDecoder().decode(base64);
            return of(KeyFactory.getInstance(ALGORITHM).generatePublic(new X509EncodedKeySpec(encoded)));
        } catch (GeneralSecurityException e) {
            throw new IllegalArgumentException("this is no public key of Ed25519: " + e.getMessage(), e);
        }
    }

    /** SubjectPublicKeyInfo (X.509), in Base64 of one line. */
    public String base64() {
        return Base64.getEncoder().encodeToString(key.getEncoded());
    }

    /** The SHA-256 of SubjectPublicKeyInfo, in hexadecimal. */
    public String id() {
        return Sha256.hex(key.getEncoded());
    }

    /** Whether this key signed the head as it stands. */
    public boolean signed(SignedHead head) {
        if (!head.keyId().equals(id())) {
            return false;
        }
        try {
            Signature signature = Signature.getInstance(ALGORITHM);
            signature.initVerify(key);
            signature.update(head.head().bytes());
            return signature.verify(HexFormat.of().parseHex(head.signature()));
        } catch (GeneralSecurityException | IllegalArgumentException e) {
            // A signature of another length or form is none of this key's.
            return false;
        }
    }
}
