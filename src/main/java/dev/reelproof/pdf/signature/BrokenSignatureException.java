package dev.reelproof.pdf.signature;

/** A signature does not fit the document that has it; the message says in what. */
public class BrokenSignatureException extends Exception {
    private static final long serialVersionUID = 1;

    public BrokenSignatureException(String message) {
        super(message);
    }
}
