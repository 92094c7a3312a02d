package dev.reelproof.judgement;

import dev.reelproof.correction.SummaryStatistics;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.GridRule;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Per;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Scope;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Site;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Whether the values gathered are all that a requirement needs: every pair and combination, the whole range, a fine enough grid. */
final class Coverage {
    /** A step may be wider by this share: bays print frequencies with few decimals. Common practice, no source. */
    private static final double STEP_TOLERANCE = 1e-3;

    /** Digits of an average in a sentence. */
    private static final MathContext DIGITS_TOLD = new MathContext(6);

    private final Evidence evidence;
    private final CoreLayout core;
    private final GridRule gridRule;

    Coverage(Evidence evidence, CoreLayout core, LimitSet limitSet) {
        this.evidence = evidence;
        this.core = core;
        this.gridRule = limitSet.grid();
    }

    /** What stands in the way; empty when nothing does. */
    List<Obstacle> obstacles(Requirement requirement, GatheredSeries gathered) {
        List<Obstacle> obstacles = new ArrayList<>();
        boolean byUnits = requirement.scope() != Scope.CORE
                || requirement.unitPairs().isPresent()
                || requirement.particulars().per() == Per.UNIT;
        if (byUnits && !core.isKnown()) {
            obstacles.add(new Obstacle(Obstacle.Kind.UNITS_UNKNOWN, Map.of()));
            return obstacles;
        }
        if (gathered.series().isEmpty()) {
            obstacles.add(withMissingParts(Obstacle.Kind.NO_DATA, requirement, Map.of()));
            obstacles.addAll(gathered.obstacles());
            return obstacles;
        }
        missing(requirement, gathered).ifPresent(obstacles::add);
        Map<FrequencyGrid, Function<Series, Optional<Obstacle>>> ranges = new IdentityHashMap<>();
        for (Series series : gathered.series()) {
            if (series.grid() != null) {
                ranges.computeIfAbsent(series.grid(), grid -> range(requirement, grid))
                        .apply(series)
                        .ifPresent(obstacles::add);
            }
        }
        obstacles.addAll(gathered.obstacles());
        return obstacles;
    }

    /**
     * What stands in the way of rejecting a reel for a figure of many values; empty when nothing does. It is all that stands in the way of
     * a pass, and the sample: pairs that stand for all while all is well must be joined by the rest when it is not.
     */
    List<Obstacle> obstaclesToFail(Requirement requirement, GatheredSeries gathered) {
        List<Obstacle> obstacles = obstacles(requirement, gathered);
        sample(requirement, gathered)
                .ifPresent(sample -> obstacles.add(sampleObstacle(
                        Obstacle.Kind.SAMPLE_FAILS,
                        requirement,
                        gathered,
                        requirement.particulars().sampling().orElseThrow())));
        return obstacles;
    }

    private Optional<Obstacle> missing(Requirement requirement, GatheredSeries gathered) {
        Set<Subject> present = new HashSet<>();
        for (Series series : gathered.series()) {
            Subject subject = series.subject();
            boolean anyEndWillDo = !requirement.property().needsEnd();
            present.add(subject.withSample(null).at(anyEndWillDo ? null : subject.end()));
        }
        if (requirement.property().isSampled() || present.contains(Subject.ofReel())) {
            return Optional.empty();
        }
        List<Subject> expected = expected(requirement, requirement.property());
        List<Subject> missing = missing(expected, present, requirement.property());
        if (missing.isEmpty() || sample(requirement, gathered).isPresent()) {
            return Optional.empty();
        }
        Optional<Particulars.Sampling> sampling =
                requirement.particulars().sampling().filter(asked -> sampled(gathered).length >= asked.pairs());
        return sampling.isPresent()
                ? Optional.of(sampleObstacle(Obstacle.Kind.SAMPLE_OUTSIDE_BAND, requirement, gathered, sampling.get()))
                : Optional.of(withMissingParts(
                        Obstacle.Kind.PAIR_MISSING,
                        requirement,
                        Map.of("missing", new MissingParts(expected, missing).words())));
    }

    private static List<Subject> missing(List<Subject> expected, Set<Subject> present, Property property) {
        return expected.stream()
                .filter(subject -> !isPresent(present, subject, property))
                .toList();
    }

    /** What was not measured, and what keeps it from being formed from its parts; nothing of these when it has none or has them all. */
    private Obstacle withMissingParts(Obstacle.Kind kind, Requirement requirement, Map<String, String> what) {
        Map<String, String> parts = new HashMap<>(what);
        parts.put("property", requirement.property().id());
        for (Property part : requirement.property().parts()) {
            Set<Subject> present = new HashSet<>();
            evidence.readings(part).forEach(reading -> present.add(reading.subject()));
            evidence.sweeps(part)
                    .forEach(sweep -> present.add(
                            part.needsEnd() ? sweep.subject() : sweep.subject().at(null)));
            List<Subject> expected = expected(requirement, part);
            List<Subject> missing = missing(expected, present, part);
            if (present.isEmpty()) {
                parts.put("part", part.id());
            } else if (!missing.isEmpty()) {
                parts.put("incomplete", part.id());
                parts.put("absent", new MissingParts(expected, missing).words());
            }
        }
        return new Obstacle(kind, parts);
    }

    /**
     * In words that the pairs measured stand for all, where not all were and the requirement lets them; else empty. The average is held
     * against the band as it is, not rounded: the band says which samples may stand for all, it is no limit of the cable.
     */
    Optional<String> sample(Requirement requirement, GatheredSeries gathered) {
        double[] values = sampled(gathered);
        return requirement
                .particulars()
                .sampling()
                .filter(sampling -> values.length >= sampling.pairs() && values.length < core.pairs())
                .filter(sampling -> Comparison.unrounded(
                                SummaryStatistics.mean(values),
                                Limit.between(sampling.lower(), sampling.upper()),
                                Double.NaN)
                        .passes())
                .map(sampling -> "sample: " + values.length + " of " + core.pairs()
                        + " pairs measured, whose average lies within "
                        + sampling.lower().formula(Double.NaN) + " to "
                        + sampling.upper().formula(Double.NaN) + "; the rest need not be measured");
    }

    private static double[] sampled(GatheredSeries gathered) {
        return gathered.series().stream()
                .filter(series -> series.obstacle(0) == null)
                .mapToDouble(series -> series.corrected(0))
                .toArray();
    }

    private Obstacle sampleObstacle(
            Obstacle.Kind kind, Requirement requirement, GatheredSeries gathered, Particulars.Sampling sampling) {
        double[] values = sampled(gathered);
        return new Obstacle(
                kind,
                Map.of(
                        "property", requirement.property().id(),
                        "statistic", requirement.statistic().word(),
                        "count", String.valueOf(values.length),
                        "pairs", String.valueOf(core.pairs()),
                        "average",
                                BigDecimal.valueOf(SummaryStatistics.mean(values))
                                        .round(DIGITS_TOLD)
                                        .toPlainString(),
                        "lower", sampling.lower().formula(Double.NaN),
                        "upper", sampling.upper().formula(Double.NaN),
                        "unit", requirement.unit().text()));
    }

    private static boolean isPresent(Set<Subject> present, Subject subject, Property property) {
        if (present.contains(subject)) {
            return true;
        }
        Site site = subject.site(property);
        if (site == Site.COMBINATION) {
            return present.contains(subject.reversed());
        }
        Integer pair = subject.pair();
        return pair != null
                && site == Site.PAIR
                && property.sites().contains(Site.CONDUCTOR)
                && present.contains(Subject.ofConductor(pair, Conductor.A))
                && present.contains(Subject.ofConductor(pair, Conductor.B));
    }

    /** The subjects that must be there, of a property that is not of the reel alone; of one with ends, those at the near end. */
    private List<Subject> expected(Requirement requirement, Property property) {
        End end = property.needsEnd() ? End.NEAR : null;
        List<Subject> expected = new ArrayList<>();
        Set<Site> sites = property.sites();
        for (int pair = 1; pair <= core.pairs(); pair++) {
            if (sites.contains(Site.PAIR)) {
                expected.add(Subject.ofPair(pair).at(end));
            } else if (sites.contains(Site.CONDUCTOR)) {
                expected.add(Subject.ofConductor(pair, Conductor.A));
                expected.add(Subject.ofConductor(pair, Conductor.B));
            } else {
                boolean ordered = sites.contains(Site.ORDERED_COMBINATION);
                for (int partner = ordered ? 1 : pair + 1; partner <= core.pairs(); partner++) {
                    if (partner != pair && core.counts(requirement, pair, partner)) {
                        expected.add(Subject.ofCombination(pair, partner).at(end));
                    }
                }
            }
        }
        return expected;
    }

    /** What a grid lacks to judge a requirement on it: worked out once, told of each series on that grid. */
    private Function<Series, Optional<Obstacle>> range(Requirement requirement, FrequencyGrid grid) {
        if (requirement.domain() instanceof Domain.Spot spot && !holds(grid, spot)) {
            return lacking(
                    Obstacle.Kind.SPOT_NOT_MEASURED, requirement, Map.of("at", String.valueOf(spot.megahertz())));
        }
        if (requirement.domain() instanceof Domain.Range range) {
            boolean spanned = grid.first() <= range.from() * (1 + Domain.FREQUENCY_TOLERANCE)
                    && grid.last() >= range.to() * (1 - Domain.FREQUENCY_TOLERANCE);
            return spanned
                    ? coarse(requirement, grid, range)
                    : lacking(
                            Obstacle.Kind.RANGE_NOT_SPANNED,
                            requirement,
                            Map.of(
                                    "from", String.valueOf(grid.first()),
                                    "to", String.valueOf(grid.last()),
                                    "limitFrom", String.valueOf(range.from()),
                                    "limitTo", String.valueOf(range.to())));
        }
        return series -> Optional.empty();
    }

    /** An obstacle that every series on a grid has, with its figures. */
    private static Function<Series, Optional<Obstacle>> lacking(
            Obstacle.Kind kind, Requirement requirement, Map<String, String> figures) {
        return series -> {
            Map<String, String> parts = new HashMap<>(figures);
            parts.put("property", requirement.property().id());
            parts.put("where", series.subject().words());
            return Optional.of(new Obstacle(kind, parts));
        };
    }

    private static boolean holds(FrequencyGrid grid, Domain.Spot spot) {
        for (int i = 0; i < grid.size(); i++) {
            if (spot.holds(grid.megahertz(i))) {
                return true;
            }
        }
        return false;
    }

    private Function<Series, Optional<Obstacle>> coarse(
            Requirement requirement, FrequencyGrid grid, Domain.Range range) {
        for (int i = 1; i < grid.size(); i++) {
            double low = grid.megahertz(i - 1);
            double high = grid.megahertz(i);
            boolean within = high > range.from() && low < range.to();
            boolean fine = high - low <= gridRule.megahertz() * (1 + STEP_TOLERANCE)
                    || Math.log10(high / low) <= gridRule.decades() * (1 + STEP_TOLERANCE);
            if (within && !fine) {
                return lacking(
                        Obstacle.Kind.GRID_TOO_COARSE,
                        requirement,
                        Map.of(
                                "from", String.valueOf(low),
                                "to", String.valueOf(high),
                                "widest", String.valueOf(gridRule.megahertz()),
                                "widestDecades", String.valueOf(gridRule.decades())));
            }
        }
        return series -> Optional.empty();
    }
}
