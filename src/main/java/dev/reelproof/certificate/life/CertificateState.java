package dev.reelproof.certificate.life;

/** What an issued certificate is worth now. */
public enum CertificateState {
    /** Nothing speaks against it, and nothing has taken its place. */
    CURRENT("current"),
    /** Something came up that may take its ground away; see {@link Question}. */
    IN_QUESTION("in-question"),
    /** A later issue, or the certificate of a later test, has taken its place. */
    SUPERSEDED("superseded"),
    /** Two persons took it back. */
    WITHDRAWN("withdrawn");

    private final String word;

    CertificateState(String word) {
        this.word = word;
    }

    /** The state as answers spell it. */
    public String word() {
        return word;
    }
}
