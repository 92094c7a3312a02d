package dev.reelproof.pdf.check;

/**
 * One thing that a check found.
 *
 * @param kind what it means for the whole
 * @param words a sentence for who holds the paper
 */
public record Statement(Kind kind, String words) {

    /** What a statement means for the whole. */
    public enum Kind {
        /** It fits, or only informs. */
        FITS,
        /** It leaves open who signed. */
        LEAVES_SIGNER_OPEN,
        /** It shows that the document is not as it was issued. */
        OBJECTS
    }

    static Statement fits(String words) {
        return new Statement(Kind.FITS, words);
    }

    static Statement leavesSignerOpen(String words) {
        return new Statement(Kind.LEAVES_SIGNER_OPEN, words);
    }

    static Statement objects(String words) {
        return new Statement(Kind.OBJECTS, words);
    }
}
