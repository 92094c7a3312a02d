package dev.reelproof.analysis;

import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Reels with what was found of one property, and what each of them met on its way. An exposure is a set of reels: a reel that meets a
 * lot through eight conductors counts once.
 */
public final class Population {
    private final List<TestedReel> reels;
    private final SortedMap<Exposure, BitSet> exposed;

    private Population(List<TestedReel> reels, SortedMap<Exposure, BitSet> exposed) {
        this.reels = reels;
        this.exposed = exposed;
    }

    /**
     * A population.
     *
     * @param reels the reels, each once
     * @param exposed for each exposure the reels that met it, by their places in the list, from 0
     * @throws IllegalArgumentException when a reel is in the list twice, or a place is beyond the list
     */
    public static Population of(List<TestedReel> reels, Map<Exposure, BitSet> exposed) {
        if (reels.stream().map(TestedReel::reel).distinct().count() != reels.size()) {
            throw new IllegalArgumentException("a reel is in the population twice; it counts once");
        }
        SortedMap<Exposure, BitSet> copy = new TreeMap<>();
        exposed.forEach((exposure, members) -> {
            if (members.length() > reels.size()) {
                throw new IllegalArgumentException(exposure + " names reel " + (members.length() - 1)
                        + " of a population of " + reels.size() + ", counted from 0");
            }
            copy.put(exposure, (BitSet) members.clone());
        });
        return new Population(List.copyOf(reels), copy);
    }

    /** The reels; their places here are those of the exposures. */
    public List<TestedReel> reels() {
        return reels;
    }

    /** The exposures with the places of the reels that met them. Not to be changed. */
    SortedMap<Exposure, BitSet> exposed() {
        return Collections.unmodifiableSortedMap(exposed);
    }

    /** The places of the reels that fail. */
    BitSet failing() {
        BitSet failing = new BitSet(reels.size());
        for (int i = 0; i < reels.size(); i++) {
            failing.set(i, reels.get(i).failing());
        }
        return failing;
    }
}
