package dev.reelproof.analysis;

import java.util.List;

/**
 * The test as the cause: something of the test explains what was found at least as well as anything upstream.
 *
 * @param suspect the best evidence against the test
 * @param explains what lies upstream and is explained by it
 * @param cannotBeToldFrom what lies upstream and cannot be told from it: the same reels met it, or nearly the same
 */
public record TestCause(Suspect suspect, List<Exposure> explains, List<Exposure> cannotBeToldFrom) {

    public TestCause {
        if (suspect.side() == Suspect.Side.UPSTREAM) {
            throw new IllegalArgumentException(suspect.first() + " is not of the test");
        }
        explains = List.copyOf(explains);
        cannotBeToldFrom = List.copyOf(cannotBeToldFrom);
    }
}
