package dev.reelproof.analysis;

import java.time.LocalDate;
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
    private final Strata weeks;
    private final Map<Exposure, Doses> doses;

    private Population(
            List<TestedReel> reels, SortedMap<Exposure, BitSet> exposed, Strata weeks, Map<Exposure, Doses> doses) {
        this.reels = reels;
        this.exposed = exposed;
        this.weeks = weeks;
        this.doses = doses;
    }

    /**
     * A population tested in one week, of which no shares are known.
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
        return new Population(List.copyOf(reels), copy, Strata.whole(reels.size()), Map.of());
    }

    /**
     * The same reels with the weeks of their tests.
     *
     * @param weekOfEach the Monday of each reel's week
     * @throws IllegalArgumentException when there is not one a reel
     */
    Population withWeeks(List<LocalDate> weekOfEach) {
        if (weekOfEach.size() != reels.size()) {
            throw new IllegalArgumentException(weekOfEach.size() + " weeks of " + reels.size() + " reels");
        }
        return new Population(reels, exposed, Strata.by(weekOfEach), doses);
    }

    /** The same reels with the shares of them that were made from each lot. */
    Population withDoses(Map<Exposure, Doses> ofEach) {
        return new Population(reels, exposed, weeks, Map.copyOf(ofEach));
    }

    /** The reels; their places here are those of the exposures. */
    public List<TestedReel> reels() {
        return reels;
    }

    /** The exposures with the places of the reels that met them. Not to be changed. */
    SortedMap<Exposure, BitSet> exposed() {
        return Collections.unmodifiableSortedMap(exposed);
    }

    /** The strata within which the reels are compared. */
    Strata strata(StrataBy by) {
        return by == StrataBy.WEEK ? weeks : Strata.whole(reels.size());
    }

    /** The shares of reels that were made from each lot, where they are known. */
    Map<Exposure, Doses> doses() {
        return doses;
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
