package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.LotFault;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What became of a report.
 *
 * @param fate what became of it
 * @param faults why it is not kept; empty when it is, and only then
 */
public record LotOutcome(Fate fate, List<LotFault> faults) {

    /** What can become of a report. */
    public enum Fate {
        /** It is registered now. */
        REGISTERED,
        /** The same was registered before. */
        KNOWN,
        /** It is kept until its parents come. */
        WAITING,
        /** It cannot be so, and is not kept. */
        REFUSED,
        /** Another lot has its identifier, or its run was told otherwise; it is not kept. */
        CONFLICT;

        boolean isKept() {
            return this == REGISTERED || this == KNOWN || this == WAITING;
        }
    }

    public LotOutcome {
        faults = List.copyOf(faults);
        if (fate.isKept() != faults.isEmpty()) {
            throw new IllegalArgumentException(
                    "a report that is kept has no faults, and one that is not has some; " + fate + " has " + faults);
        }
    }

    static LotOutcome of(Fate fate) {
        return new LotOutcome(fate, List.of());
    }

    static LotOutcome refused(List<LotFault> faults) {
        return new LotOutcome(Fate.REFUSED, faults);
    }

    static LotOutcome refused(String where, String message) {
        return refused(List.of(new LotFault(where, message)));
    }

    static LotOutcome conflict(String where, String message) {
        return new LotOutcome(Fate.CONFLICT, List.of(new LotFault(where, message)));
    }

    /** Why the report is not kept, in one sentence. */
    public String reason() {
        return faults.stream()
                .map(fault -> fault.where() + ": " + fault.message())
                .collect(Collectors.joining("; "));
    }
}
