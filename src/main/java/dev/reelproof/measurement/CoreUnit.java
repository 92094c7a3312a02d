package dev.reelproof.measurement;

import java.util.Set;

/**
 * A unit of a multi-unit core: a run of consecutive pairs under one binder.
 *
 * @param unit the unit's number, from 1
 * @param firstPair its first pair
 * @param lastPair its last pair
 * @param adjacentTo the numbers of the units that touch it
 */
public record CoreUnit(int unit, int firstPair, int lastPair, Set<Integer> adjacentTo) {

    public CoreUnit {
        if (!(unit >= 1 && firstPair >= 1 && lastPair >= firstPair)) {
            throw new IllegalArgumentException("a unit needs a number from 1 and pairs in order, not unit " + unit
                    + ", pairs " + firstPair + " to " + lastPair);
        }
        adjacentTo = Set.copyOf(adjacentTo);
    }
}
