package dev.reelproof.certificate;

/** A paper that a plant issues under a number: what its head, its foot and its file say of it. */
public interface NumberedPaper {
    /** Its number. */
    String number();

    /** Which issue of the number, from 1. */
    int issue();

    /** When it was issued, as ISO 8601 with offset. */
    String issued();

    /** The plant that issues it. */
    Plant plant();

    /** What it is declared to be, and how it is printed. */
    CertificateContent.Paper paper();
}
