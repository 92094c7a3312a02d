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
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Whether a population holds all that a requirement needs: every pair and combination, the whole range, a fine enough grid. */
final class Coverage {
    /** Frequencies count as equal within this share of themselves: they pass through unit conversions. */
    static final double FREQUENCY_TOLERANCE = 1e-9;

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

    /** What stands in the way, in sentences that begin with the kind of obstacle; empty when nothing does. */
    List<String> obstacles(Requirement requirement, GatheredSeries population) {
        List<String> obstacles = new ArrayList<>();
        boolean byUnits =
                requirement.scope() != Scope.CORE || requirement.unitPairs().isPresent();
        if (byUnits && !core.isKnown()) {
            obstacles.add("units unknown: the product does not say which pairs form its units");
            return obstacles;
        }
        if (population.series().isEmpty()) {
            obstacles.add("no data: no " + requirement.property() + " was measured" + missingParts(requirement));
            obstacles.addAll(population.obstacles());
            return obstacles;
        }
        missing(requirement, population).ifPresent(obstacles::add);
        for (Series series : population.series()) {
            range(requirement, series).ifPresent(obstacles::add);
        }
        obstacles.addAll(population.obstacles());
        return obstacles;
    }

    private Optional<String> missing(Requirement requirement, GatheredSeries population) {
        Set<Subject> present = new HashSet<>();
        for (Series series : population.series()) {
            Subject subject = series.subject();
            boolean anyEndWillDo = !requirement.property().needsEnd();
            present.add(subject.withSample(null).at(anyEndWillDo ? null : subject.end()));
        }
        if (requirement.property().isSampled() || present.contains(Subject.ofReel())) {
            return Optional.empty();
        }
        List<Subject> expected = expected(requirement, requirement.property());
        List<Subject> missing = missing(expected, present, requirement.property());
        return missing.isEmpty() || sample(requirement, population).isPresent()
                ? Optional.empty()
                : Optional.of("pair missing: " + requirement.property() + " of "
                        + new MissingParts(expected, missing).words() + " was not measured"
                        + missingParts(requirement));
    }

    private static List<Subject> missing(List<Subject> expected, Set<Subject> present, Property property) {
        return expected.stream()
                .filter(subject -> !isPresent(present, subject, property))
                .toList();
    }

    /** What keeps a property from being formed from its parts, as the end of a sentence; empty when it has none or has them all. */
    private String missingParts(Requirement requirement) {
        StringBuilder words = new StringBuilder();
        for (Property part : requirement.property().parts()) {
            Set<Subject> present = new HashSet<>();
            evidence.readings(part).forEach(reading -> present.add(reading.subject()));
            evidence.sweeps(part)
                    .forEach(sweep -> present.add(
                            part.needsEnd() ? sweep.subject() : sweep.subject().at(null)));
            List<Subject> expected = expected(requirement, part);
            List<Subject> missing = missing(expected, present, part);
            if (present.isEmpty()) {
                words.append(", nor any ").append(part).append(" that it is formed from");
            } else if (!missing.isEmpty()) {
                words.append(", and it is not formed: ")
                        .append(part)
                        .append(" is missing of ")
                        .append(new MissingParts(expected, missing).words());
            }
        }
        return words.toString();
    }

    /** In words that the pairs measured stand for all, where not all were and the requirement lets them; else empty. */
    Optional<String> sample(Requirement requirement, GatheredSeries population) {
        double[] values = population.series().stream()
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
        return site == Site.PAIR
                && property.sites().contains(Site.CONDUCTOR)
                && present.contains(Subject.ofConductor(subject.pair(), Conductor.A))
                && present.contains(Subject.ofConductor(subject.pair(), Conductor.B));
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

    private Optional<String> range(Requirement requirement, Series series) {
        FrequencyGrid grid = series.grid();
        if (grid == null) {
            return Optional.empty();
        }
        if (requirement.domain() instanceof Domain.Spot spot) {
            return holds(grid, spot.megahertz())
                    ? Optional.empty()
                    : Optional.of("range not spanned: " + name(requirement, series) + " has no point at "
                            + spot.megahertz() + " MHz");
        }
        if (requirement.domain() instanceof Domain.Range range) {
            if (!(grid.first() <= range.from() * (1 + FREQUENCY_TOLERANCE)
                    && grid.last() >= range.to() * (1 - FREQUENCY_TOLERANCE))) {
                return Optional.of("range not spanned: " + name(requirement, series) + " was measured from "
                        + grid.first() + " to " + grid.last() + " MHz; the limit runs from " + range.from() + " to "
                        + range.to() + " MHz");
            }
            return coarse(grid, range)
                    .map(step -> "grid too coarse: " + name(requirement, series) + " has a step " + step + "; at most "
                            + gridRule.megahertz() + " MHz or " + gridRule.decades() + " decades, whichever is wider");
        }
        return Optional.empty();
    }

    private static String name(Requirement requirement, Series series) {
        return requirement.property() + " of " + series.subject().words();
    }

    private static boolean holds(FrequencyGrid grid, double megahertz) {
        for (int i = 0; i < grid.size(); i++) {
            if (isAt(grid.megahertz(i), megahertz)) {
                return true;
            }
        }
        return false;
    }

    /** Whether two frequencies are the same. */
    static boolean isAt(double frequency, double megahertz) {
        return Math.abs(frequency - megahertz) <= megahertz * FREQUENCY_TOLERANCE;
    }

    private Optional<String> coarse(FrequencyGrid grid, Domain.Range range) {
        for (int i = 1; i < grid.size(); i++) {
            double low = grid.megahertz(i - 1);
            double high = grid.megahertz(i);
            boolean within = high > range.from() && low < range.to();
            boolean fine = high - low <= gridRule.megahertz() * (1 + STEP_TOLERANCE)
                    || Math.log10(high / low) <= gridRule.decades() * (1 + STEP_TOLERANCE);
            if (within && !fine) {
                return Optional.of("from " + low + " to " + high + " MHz");
            }
        }
        return Optional.empty();
    }
}
