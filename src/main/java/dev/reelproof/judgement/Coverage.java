package dev.reelproof.judgement;

import dev.reelproof.correction.SummaryStatistics;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.GridRule;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Scope;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Site;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** Whether the values gathered are all that a requirement needs: every pair and combination, the whole range, a fine enough grid. */
final class Coverage {
    /** A step may be wider by this share: bays print frequencies with few decimals. Common practice, no source. */
    private static final double STEP_TOLERANCE = 1e-3;

    private final Evidence evidence;
    private final CoreLayout core;
    private final GridRule gridRule;
    private final RoundingRule rounding;

    Coverage(Evidence evidence, CoreLayout core, LimitSet limitSet) {
        this.evidence = evidence;
        this.core = core;
        this.gridRule = limitSet.grid();
        this.rounding = limitSet.rounding();
    }

    /** What stands in the way; empty when nothing does. */
    List<Obstacle> obstacles(Requirement requirement, GatheredSeries gathered) {
        List<Obstacle> obstacles = new ArrayList<>();
        boolean byUnits =
                requirement.scope() != Scope.CORE || requirement.unitPairs().isPresent();
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
        for (Series series : gathered.series()) {
            range(requirement, series).ifPresent(obstacles::add);
        }
        obstacles.addAll(gathered.obstacles());
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
        return missing.isEmpty() || sample(requirement, gathered).isPresent()
                ? Optional.empty()
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

    /** In words that the pairs measured stand for all, where not all were and the requirement lets them; else empty. */
    Optional<String> sample(Requirement requirement, GatheredSeries gathered) {
        double[] values = gathered.series().stream()
                .filter(series -> series.obstacle(0).isEmpty())
                .mapToDouble(series -> series.corrected(0))
                .toArray();
        return requirement
                .particulars()
                .sampling()
                .filter(sampling -> values.length >= sampling.pairs() && values.length < core.pairs())
                .filter(sampling -> Comparison.of(
                                SummaryStatistics.mean(values),
                                Limit.between(sampling.lower(), sampling.upper()),
                                Double.NaN,
                                rounding)
                        .passes())
                .map(sampling -> "sample: " + values.length + " of " + core.pairs()
                        + " pairs measured, whose average lies within "
                        + sampling.lower().formula(Double.NaN) + " to "
                        + sampling.upper().formula(Double.NaN) + "; the rest need not be measured");
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

    private Optional<Obstacle> range(Requirement requirement, Series series) {
        FrequencyGrid grid = series.grid();
        if (grid == null) {
            return Optional.empty();
        }
        if (requirement.domain() instanceof Domain.Spot spot) {
            return holds(grid, spot)
                    ? Optional.empty()
                    : Optional.of(obstacle(
                            Obstacle.Kind.SPOT_NOT_MEASURED,
                            requirement,
                            series,
                            Map.of("at", String.valueOf(spot.megahertz()))));
        }
        if (requirement.domain() instanceof Domain.Range range) {
            if (!(grid.first() <= range.from() * (1 + Domain.FREQUENCY_TOLERANCE)
                    && grid.last() >= range.to() * (1 - Domain.FREQUENCY_TOLERANCE))) {
                return Optional.of(obstacle(
                        Obstacle.Kind.RANGE_NOT_SPANNED,
                        requirement,
                        series,
                        Map.of(
                                "from", String.valueOf(grid.first()),
                                "to", String.valueOf(grid.last()),
                                "limitFrom", String.valueOf(range.from()),
                                "limitTo", String.valueOf(range.to()))));
            }
            return coarse(requirement, series, range);
        }
        return Optional.empty();
    }

    /** An obstacle that one series has, with its figures. */
    private static Obstacle obstacle(
            Obstacle.Kind kind, Requirement requirement, Series series, Map<String, String> figures) {
        Map<String, String> parts = new HashMap<>(figures);
        parts.put("property", requirement.property().id());
        parts.put("where", series.subject().words());
        return new Obstacle(kind, parts);
    }

    private static boolean holds(FrequencyGrid grid, Domain.Spot spot) {
        for (int i = 0; i < grid.size(); i++) {
            if (spot.holds(grid.megahertz(i))) {
                return true;
            }
        }
        return false;
    }

    private Optional<Obstacle> coarse(Requirement requirement, Series series, Domain.Range range) {
        FrequencyGrid grid = Objects.requireNonNull(series.grid(), "only a sweep has steps");
        for (int i = 1; i < grid.size(); i++) {
            double low = grid.megahertz(i - 1);
            double high = grid.megahertz(i);
            boolean within = high > range.from() && low < range.to();
            boolean fine = high - low <= gridRule.megahertz() * (1 + STEP_TOLERANCE)
                    || Math.log10(high / low) <= gridRule.decades() * (1 + STEP_TOLERANCE);
            if (within && !fine) {
                return Optional.of(obstacle(
                        Obstacle.Kind.GRID_TOO_COARSE,
                        requirement,
                        series,
                        Map.of(
                                "from", String.valueOf(low),
                                "to", String.valueOf(high),
                                "widest", String.valueOf(gridRule.megahertz()),
                                "widestDecades", String.valueOf(gridRule.decades()))));
            }
        }
        return Optional.empty();
    }
}
