package dev.reelproof.certificate;

/** Whether what a certificate says may be relied on now. */
public enum CertificateStanding {
    CURRENT("current"),
    IN_QUESTION("in-question"),
    SUPERSEDED("superseded");

    private final String word;

    CertificateStanding(String word) {
        this.word = word;
    }

    /** The state as answers spell it. */
    public String word() {
        return word;
    }

    /**
     * The standing of a certificate.
     *
     * @param isReplaced whether its number has a later issue, or its reel a later certificate
     * @param isHeld whether its reel is on hold
     * @param isReelAccepted whether the newest test of its reel was passed
     */
    public static CertificateStanding of(boolean isReplaced, boolean isHeld, boolean isReelAccepted) {
        if (isReplaced) {
            return SUPERSEDED;
        }
        return isHeld || !isReelAccepted ? IN_QUESTION : CURRENT;
    }
}
