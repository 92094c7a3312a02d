package dev.reelproof.judgement;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The shares that make up the uncertainty of a corrected value.
 *
 * @param contributions the shares; independent of each other
 * @param missing why there is no uncertainty, in words; absent when there is one
 */
record Budget(List<Contribution> contributions, @Nullable String missing) {

    static Budget without(String reason) {
        return new Budget(List.of(), reason);
    }

    boolean isKnown() {
        return missing == null;
    }

    /** The combined standard uncertainty: the root of the sum of the squares. */
    double standard() {
        double squares = 0;
        for (Contribution contribution : contributions) {
            squares += contribution.amount() * contribution.amount();
        }
        return Math.sqrt(squares);
    }
}
