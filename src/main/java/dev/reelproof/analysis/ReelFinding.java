package dev.reelproof.analysis;

import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What the newest record of a reel says of one property: the worst of its findings.
 *
 * @param reel the reel's number
 * @param product the code of the product that it was tested as
 * @param failing whether a finding rejects the reel
 * @param tested whether there is a finding, and none that was not tested
 * @param margin the least margin in the unit of the findings, positive on the good side; absent where none is known
 * @param units the units of the findings; empty where they have none
 * @param occasion where, with what, by whom and when it was tested
 */
public record ReelFinding(
        String reel,
        String product,
        boolean failing,
        boolean tested,
        @Nullable Double margin,
        Set<String> units,
        TestOccasion occasion) {

    public ReelFinding {
        units = Set.copyOf(units);
        Objects.requireNonNull(occasion, "a reel was tested at some time");
    }

    /** Whether it says enough to be counted: a failure always does, a pass only when everything was tested. */
    public boolean countsFor(Evidence evidence) {
        return (failing || tested) && (margin != null || !evidence.needsMargins());
    }

    /** The reel as a member of a population. */
    TestedReel asTested() {
        return new TestedReel(reel, failing, margin);
    }
}
