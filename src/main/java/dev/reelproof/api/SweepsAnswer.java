package dev.reelproof.api;

import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Property;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The sweeps of a property with their limit, for plots. */
record SweepsAnswer(String property, String unit, String frequencyUnit, List<SweepAnswer> sweeps, LimitAnswer limit) {
    private static final String MEGAHERTZ = "MHz";

    /** A sweep. */
    record SweepAnswer(
            Integer pair,
            Integer partner,
            String end,
            boolean derived,
            double[] frequencies,
            double[] measured,
            double[] corrected) {

        static SweepAnswer of(CorrectedSweep sweep) {
            return new SweepAnswer(
                    sweep.subject().pair(),
                    sweep.subject().partner(),
                    sweep.subject().end() == null ? null : sweep.subject().end().word(),
                    sweep.derived(),
                    sweep.grid().toArray(),
                    sweep.measured(),
                    sweep.corrected());
        }
    }

    /** A limit along frequency; of the two bounds those that there are. */
    record LimitAnswer(String requirement, String sense, double[] frequencies, double[] upper, double[] lower) {

        static LimitAnswer of(Requirement requirement, double[] megahertz) {
            double[] held = Arrays.stream(megahertz)
                    .filter(f -> holds(requirement.domain(), f))
                    .toArray();
            Limit limit = requirement.limit();
            return new LimitAnswer(
                    requirement.id(),
                    limit.sense(),
                    held,
                    limit.upper().map(bound -> along(bound, held)).orElse(null),
                    limit.lower().map(bound -> along(bound, held)).orElse(null));
        }

        private static double[] along(Bound bound, double[] megahertz) {
            return Arrays.stream(megahertz).map(bound::at).toArray();
        }
    }

    /** One sweep with the limit at each of its frequencies; null where none holds. */
    record One(
            String property,
            String unit,
            Integer pair,
            Integer partner,
            String end,
            boolean derived,
            Frequencies frequencies,
            double[] measured,
            double[] corrected,
            List<Double> limit) {

        static One of(CorrectedSweep sweep, Optional<Requirement> requirement) {
            return new One(
                    sweep.property().tradeName(),
                    sweep.unit(),
                    sweep.subject().pair(),
                    sweep.subject().partner(),
                    sweep.subject().end() == null ? null : sweep.subject().end().word(),
                    sweep.derived(),
                    new Frequencies(MEGAHERTZ, sweep.grid().toArray()),
                    sweep.measured(),
                    sweep.corrected(),
                    requirement
                            .map(found -> Arrays.stream(sweep.grid().toArray())
                                    .mapToObj(f -> holds(found.domain(), f) ? bound(found.limit(), f) : null)
                                    .toList())
                            .orElse(null));
        }

        private static Double bound(Limit limit, double megahertz) {
            return limit.upper().or(limit::lower).orElseThrow().at(megahertz);
        }
    }

    /** Frequencies with their unit. */
    record Frequencies(String unit, double[] values) {}

    static SweepsAnswer of(Property property, List<CorrectedSweep> sweeps, Optional<Requirement> requirement) {
        double[] frequencies = sweeps.stream()
                .flatMapToDouble(sweep -> Arrays.stream(sweep.grid().toArray()))
                .sorted()
                .distinct()
                .toArray();
        return new SweepsAnswer(
                property.tradeName(),
                sweeps.get(0).unit(),
                MEGAHERTZ,
                sweeps.stream().map(SweepAnswer::of).toList(),
                requirement.map(found -> LimitAnswer.of(found, frequencies)).orElse(null));
    }

    private static boolean holds(Domain domain, double megahertz) {
        if (domain instanceof Domain.Range range) {
            return megahertz >= range.from() && megahertz <= range.to();
        }
        return domain instanceof Domain.Spot spot && spot.megahertz() == megahertz;
    }
}
