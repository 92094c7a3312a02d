package dev.reelproof.judgement;

import java.util.Comparator;

/**
 * Puts the finding first that matters most: fail, conditionally or not, then not tested, then conditional pass, then pass; of equal
 * outcomes the one with the least margin.
 */
public final class WorstFirst implements Comparator<Finding> {
    private static final Comparator<Finding> ORDER = Comparator.<Finding>comparingInt(
                    finding -> switch (finding.outcome()) {
                        case FAIL -> 0;
                        case CONDITIONAL_FAIL -> 1;
                        case NOT_TESTED -> 2;
                        case CONDITIONAL_PASS -> 3;
                        case PASS -> 4;
                    })
            .thenComparingDouble(finding -> finding.figure() == null
                    ? Double.POSITIVE_INFINITY
                    : finding.figure().margin());

    @Override
    public int compare(Finding one, Finding other) {
        return ORDER.compare(one, other);
    }
}
