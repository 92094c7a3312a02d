package dev.reelproof.genealogy.admission;

/** On what terms reports are admitted: whether they may wait for their parents, and how much more may be taken than there was. */
public enum AdmissionTerms {
    /** A report by itself: its parents are registered, and what it takes is there but for rounding. */
    ALONE(false, LotChecks.EXACT),
    /** Reports in bulk, made by several counters at several times: they may come before their parents. */
    IN_BULK(true, LotChecks.OF_COUNTERS),
    /** Reports that came in bulk and waited; all their parents have come. */
    AFTER_WAITING(false, LotChecks.OF_COUNTERS);

    private final boolean mayWait;
    private final double tolerance;

    AdmissionTerms(boolean mayWait, double tolerance) {
        this.mayWait = mayWait;
        this.tolerance = tolerance;
    }

    /** Whether a report whose parents are not all registered waits for them, and is not refused. */
    boolean mayWait() {
        return mayWait;
    }

    /** How much more than it had may be taken of a lot, relative. */
    double tolerance() {
        return tolerance;
    }
}
