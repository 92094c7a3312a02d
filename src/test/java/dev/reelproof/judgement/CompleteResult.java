package dev.reelproof.judgement;

import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.CoreUnit;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Site;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Kind;
import dev.reelproof.quantity.ReadingUnit;
import dev.reelproof.quantity.Temperature;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;

/** A synthetic result that has all that a limit set asks of a core, well within its limits, measured at its reference length. */
final class CompleteResult {
    /** Within both temperature windows that the sets state, 20 ± 1 and 23 ± 3 °C, and not a reference temperature. */
    private static final double CELSIUS = 20.5;

    private static final int LARGEST_UNIT = 12;

    /** Fewer pairs have a single combination, of which there is no standard deviation. */
    private static final int SMALLEST_UNIT = 3;

    private static final double LEVEL_TO_SPARE = 30;
    private static final double SHARE = 0.8;
    private static final double DIFFERENCE = 1e-4;

    private final LimitSet set;
    private final Product product;
    private final List<Reading> readings = new ArrayList<>();
    private final List<Sweep> sweeps = new ArrayList<>();

    CompleteResult(LimitSet set, int pairs) {
        this.set = set;
        List<CoreUnit> units = new ArrayList<>();
        for (int first = 1, last; first <= pairs; first = last + 1) {
            last = Math.min(pairs, first + LARGEST_UNIT - 1);
            if (pairs - last < SMALLEST_UNIT) {
                last = pairs;
            }
            int number = units.size() + 1;
            units.add(new CoreUnit(number, first, last, number == 2 ? Set.of(1) : Set.of()));
        }
        this.product = new Product("P", "", set.id(), pairs, "24 AWG", null, Map.of(), units);
        Set<Property> measured = new TreeSet<>();
        for (Requirement requirement : set.requirements()) {
            Set<Property> parts = requirement.property().parts();
            measured.addAll(parts.isEmpty() ? Set.of(requirement.property()) : parts);
        }
        measured.forEach(this::measure);
    }

    Product product() {
        return product;
    }

    ReelResult result() {
        return new ReelResult(
                "P",
                set.referenceLength(),
                Temperature.ofCelsius(CELSIUS),
                null,
                null,
                null,
                OffsetDateTime.parse("2027-03-02T14:09:30Z"),
                List.of(new Equipment("na-07", LocalDate.of(2027, 12, 31), Set.of())),
                readings,
                sweeps);
    }

    private void measure(Property property) {
        Set<Site> sites = property.sites();
        End end = property.needsEnd() ? End.NEAR : null;
        if (sites.contains(Site.REEL)) {
            add(property, Subject.ofReel());
            return;
        }
        for (int pair = 1; pair <= product.pairs(); pair++) {
            if (sites.contains(Site.CONDUCTOR)) {
                add(property, Subject.ofConductor(pair, Conductor.A));
                add(property, Subject.ofConductor(pair, Conductor.B));
            } else if (sites.contains(Site.PAIR)) {
                add(property, Subject.ofPair(pair).at(end));
            } else {
                int first = sites.contains(Site.ORDERED_COMBINATION) ? 1 : pair + 1;
                for (int partner = first; partner <= product.pairs(); partner++) {
                    if (partner != pair) {
                        add(property, Subject.ofCombination(pair, partner).at(end));
                    }
                }
            }
        }
    }

    private void add(Property property, Subject subject) {
        int pair = subject.pair() == null ? 0 : subject.pair();
        // Slightly different from pair to pair and conductor to conductor, so that the worst place and the extremes are
        // single; the greater conductor changes from pair to pair, as a random unbalance does.
        Conductor greater = pair % 2 == 0 ? Conductor.A : Conductor.B;
        double own = 1 + DIFFERENCE * (pair + (subject.conductor() == greater ? 1 : 0));
        List<Requirement> limiting = set.requirements().stream()
                .filter(requirement -> requirement.property() == property
                        || (property.isSweep() && requirement.property().parts().contains(property)))
                .filter(requirement -> requirement.statistic() != Statistic.RMS_DEVIATION)
                .filter(requirement -> requirement.pairs().isEmpty()
                        || requirement.pairs().get().holds(product.pairs()))
                .toList();
        ReadingUnit unit = ReadingUnit.parse(property.canonicalUnit());
        if (!property.isSweep()) {
            String pointer = "/readings/" + readings.size();
            readings.add(Reading.of(property, subject, own * value(limiting, 0), unit, new Origin.JsonValue(pointer)));
            return;
        }
        FrequencyGrid grid = grid(property, limiting);
        DoubleUnaryOperator at = f -> value(limiting, f);
        double[] values =
                Arrays.stream(grid.toArray()).map(at).map(value -> value * own).toArray();
        sweeps.add(Sweep.of(
                property, subject, grid, values, unit, new Origin.JsonArray("/sweeps/" + sweeps.size() + "/values")));
    }

    /** A value that meets every limit with much to spare: below the least upper bound, above the greatest lower one. */
    private static double value(List<Requirement> limiting, double megahertz) {
        OptionalDouble upper = limiting.stream()
                .flatMap(requirement -> requirement.limit().upper().stream())
                .mapToDouble(bound -> at(bound, megahertz))
                .min();
        OptionalDouble lower = limiting.stream()
                .flatMap(requirement -> requirement.limit().lower().stream())
                .mapToDouble(bound -> at(bound, megahertz))
                .max();
        boolean levels =
                limiting.stream().anyMatch(requirement -> requirement.unit().kind() == Kind.LEVEL);
        if (upper.isPresent() && lower.isPresent()) {
            return (upper.getAsDouble() + lower.getAsDouble()) / 2;
        }
        if (upper.isPresent()) {
            return upper.getAsDouble() * SHARE;
        }
        return lower.isPresent() ? levels ? lower.getAsDouble() + LEVEL_TO_SPARE : lower.getAsDouble() / SHARE : 1;
    }

    private static double at(Bound bound, double megahertz) {
        if (bound instanceof Bound.Curve curve) {
            return bound.at(Math.min(Math.max(megahertz, curve.from()), curve.to()));
        }
        return bound.at(megahertz);
    }

    /** All frequencies that the requirements on a property and on what is formed from it name. */
    private FrequencyGrid grid(Property property, List<Requirement> limiting) {
        TreeSet<Double> frequencies = new TreeSet<>();
        set.requirements().stream()
                .filter(requirement -> limiting.contains(requirement)
                        || requirement.property().parts().contains(property))
                .forEach(requirement -> {
                    if (requirement.domain() instanceof Domain.Spot spot) {
                        frequencies.add(spot.megahertz());
                    } else if (requirement.domain() instanceof Domain.Range range) {
                        for (double f = range.from(); f < range.to(); f += Math.max(1.5, 0.05 * f)) {
                            frequencies.add(f);
                        }
                        frequencies.add(range.to());
                    }
                });
        return FrequencyGrid.ofMegahertz(
                frequencies.stream().mapToDouble(Double::doubleValue).toArray());
    }
}
