package dev.reelproof.analysis;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
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

    private static final int LEFT_OUT = -1;

    public TracedPopulation {
        products = Set.copyOf(products);
        units = Set.copyOf(units);
    }

    /**
     * Joins what was found of reels with what they were made from. A reel of which only itself is known is left out; it is no exposure
     * of itself.
     *
     * @param findings the findings that count, one a reel
     * @param upstream what the reels were made from
     * @param notTested how many reels were left out before
     */
    public static TracedPopulation of(List<ReelFinding> findings, Upstream upstream, int notTested) {
        UpstreamTrace trace =
                new UpstreamTrace(findings.stream().map(ReelFinding::reel).toList(), upstream);
        Map<UpstreamLot, BitSet> metUpstream = trace.met();
        BitSet traced = new BitSet();
        metUpstream.forEach((lot, places) -> places.stream()
                .filter(place -> !isItself(lot, findings.get(place)))
                .forEach(traced::set));
        int[] newPlaces = new int[findings.size()];
        Arrays.fill(newPlaces, LEFT_OUT);
        Map<Exposure, BitSet> exposed = new TreeMap<>();
        List<TestedReel> reels = new ArrayList<>();
        List<LocalDate> weeks = new ArrayList<>();
        Set<String> products = new TreeSet<>();
        Set<String> units = new TreeSet<>();
        traced.stream().forEach(place -> {
            ReelFinding finding = findings.get(place);
            newPlaces[place] = reels.size();
            note(exposed, new Exposure(Factor.PRODUCT, finding.product()), reels.size());
            finding.occasion().exposures().forEach(exposure -> note(exposed, exposure, newPlaces[place]));
            reels.add(finding.asTested());
            weeks.add(finding.occasion().week());
            products.add(finding.product());
            units.addAll(finding.units());
        });
        Map<Exposure, Doses> doses = new HashMap<>();
        Map<String, Doses> dosesByLot = trace.doses(newPlaces);
        metUpstream.forEach((lot, places) -> {
            BitSet met = moved(places, newPlaces);
            lot.exposures().forEach(exposure -> note(exposed, exposure, met));
            places.stream()
                    .filter(place -> newPlaces[place] != LEFT_OUT && isItself(lot, findings.get(place)))
                    .forEach(place -> met.clear(newPlaces[place]));
            note(exposed, lot.asExposure(), met);
            Doses shares = dosesByLot.get(lot.id());
            if (shares != null) {
                doses.put(lot.asExposure(), shares);
            }
        });
        return new TracedPopulation(
                Population.of(reels, exposed).withWeeks(weeks).withDoses(doses),
                notTested,
                findings.size() - reels.size(),
                products,
                units);
    }

    private static boolean isItself(UpstreamLot lot, ReelFinding finding) {
        return lot.id().equals(finding.reel());
    }

    private static BitSet moved(BitSet places, int[] newPlaces) {
        BitSet moved = new BitSet();
        places.stream()
                .map(place -> newPlaces[place])
                .filter(place -> place != LEFT_OUT)
                .forEach(moved::set);
        return moved;
    }

    private static void note(Map<Exposure, BitSet> exposed, Exposure exposure, int place) {
        exposed.computeIfAbsent(exposure, met -> new BitSet()).set(place);
    }

    private static void note(Map<Exposure, BitSet> exposed, Exposure exposure, BitSet places) {
        if (!places.isEmpty()) {
            exposed.computeIfAbsent(exposure, met -> new BitSet()).or(places);
        }
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
