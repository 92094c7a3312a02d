package dev.reelproof.analysis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The reels that can be compared, with those that were left out.
 *
 * @param population the reels that have a finding and of which something is known that they were made from
 * @param notTested how many were left out because the property was not tested, or its margin is needed and not known
 * @param untraced how many were left out because nothing was reported of what they were made from
 * @param products the products of the population
 * @param units the units of its margins
 */
public record TracedPopulation(
        Population population, int notTested, int untraced, Set<String> products, Set<String> units) {

    public TracedPopulation {
        products = Set.copyOf(products);
        units = Set.copyOf(units);
    }

    /**
     * Joins what was found of reels with what they were made from. A reel of which only itself is known is left out; it is no exposure
     * of itself.
     *
     * @param findings the findings that count, one a reel
     * @param upstream each lot that the reels were made from, and the reels themselves where they are lots; with the places of the
     *     reels in the list of findings, from 0
     * @param notTested how many reels were left out before
     */
    public static TracedPopulation of(List<ReelFinding> findings, Map<UpstreamLot, BitSet> upstream, int notTested) {
        BitSet traced = new BitSet();
        upstream.forEach((lot, places) -> places.stream()
                .filter(place -> !isItself(lot, findings.get(place)))
                .forEach(traced::set));
        int[] newPlaces = new int[findings.size()];
        Map<Exposure, BitSet> exposed = new TreeMap<>();
        List<TestedReel> reels = new ArrayList<>();
        Set<String> products = new TreeSet<>();
        Set<String> units = new TreeSet<>();
        traced.stream().forEach(place -> {
            ReelFinding finding = findings.get(place);
            newPlaces[place] = reels.size();
            note(exposed, new Exposure(Factor.PRODUCT, finding.product()), reels.size());
            reels.add(finding.asTested());
            products.add(finding.product());
            units.addAll(finding.units());
        });
        upstream.forEach((lot, met) -> {
            Set<Exposure> exposures = lot.exposures();
            met.stream().filter(traced::get).forEach(place -> {
                int newPlace = newPlaces[place];
                exposures.forEach(exposure -> note(exposed, exposure, newPlace));
                if (!isItself(lot, findings.get(place))) {
                    note(exposed, lot.asExposure(), newPlace);
                }
            });
        });
        return new TracedPopulation(
                Population.of(reels, exposed), notTested, findings.size() - reels.size(), products, units);
    }

    private static boolean isItself(UpstreamLot lot, ReelFinding finding) {
        return lot.id().equals(finding.reel());
    }

    private static void note(Map<Exposure, BitSet> exposed, Exposure exposure, int place) {
        exposed.computeIfAbsent(exposure, met -> new BitSet()).set(place);
    }

    /**
     * Requires that the evidence of all reels can be ranked together.
     *
     * @throws IncomparableMarginsException when margins are the evidence, and they are of several products or in several units
     */
    void requireComparable(Evidence evidence) {
        if (!evidence.needsMargins()) {
            return;
        }
        if (products.size() > 1) {
            throw new IncomparableMarginsException(
                    IncomparableMarginsException.Differ.IN_PRODUCT,
                    "margins of different products are against different limits; name one of "
                            + String.join(", ", new TreeSet<>(products)));
        }
        if (units.size() > 1) {
            throw new IncomparableMarginsException(
                    IncomparableMarginsException.Differ.IN_UNIT,
                    "its margins are in different units (" + String.join(", ", new TreeSet<>(units))
                            + ") and cannot be ranked together; ask for failures, or for a time under one limit set");
        }
    }
}
