package dev.reelproof.api.result;

import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Property;
import dev.reelproof.wording.Wording;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** The sweeps of a property with their limit, for plots. */
@Schema(requiredProperties = "sweeps")
record SweepsAnswer(
        String property,
        String unit,
        String frequencyUnit,
        List<SweepAnswer> sweeps,
        @Nullable LimitAnswer limit,
        List<LimitAnswer> limits,
        String title,
        String axis) {
    private static final String MEGAHERTZ = "MHz";

    /** A sweep. */
    record SweepAnswer(
            @Nullable Integer pair,
            @Nullable Integer partner,
            @Nullable String end,
            boolean derived,
            double[] frequencies,
            double[] measured,
            double[] corrected,
            String label) {

        static SweepAnswer of(CorrectedSweep sweep, Wording wording) {
            return new SweepAnswer(
                    sweep.subject().pair(),
                    sweep.subject().partner(),
                    sweep.subject().end() == null ? null : sweep.subject().end().word(),
                    sweep.derived(),
                    sweep.grid().toArray(),
                    sweep.measured(),
                    sweep.corrected(),
                    wording.label(sweep.property(), sweep.subject()));
        }
    }

    /** A limit along frequency; of the two bounds those that there are. What it limits: each value, or a statistic of a scope's. */
    record LimitAnswer(
            String requirement,
            String statistic,
            String scope,
            String sense,
            String unit,
            double[] frequencies,
            double @Nullable [] upper,
            double @Nullable [] lower,
            String label) {

        static LimitAnswer of(Requirement requirement, double[] megahertz, Wording wording) {
            double[] held = Arrays.stream(megahertz)
                    .filter(f -> holds(requirement.domain(), f))
                    .toArray();
            Limit limit = requirement.limit();
            return new LimitAnswer(
                    requirement.id(),
                    requirement.statistic().word(),
                    requirement.scope().word(),
                    limit.sense(),
                    requirement.unit().text(),
                    held,
                    limit.upper().map(bound -> along(bound, held)).orElse(null),
                    limit.lower().map(bound -> along(bound, held)).orElse(null),
                    wording.label(requirement));
        }

        private static double[] along(Bound bound, double[] megahertz) {
            return Arrays.stream(megahertz).map(bound::at).toArray();
        }
    }

    /** One sweep with the limit at each of its frequencies where one holds. */
    @Schema(name = "SweepWithLimit", requiredProperties = "frequencies")
    record One(
            String property,
            String unit,
            @Nullable Integer pair,
            @Nullable Integer partner,
            @Nullable String end,
            boolean derived,
            Frequencies frequencies,
            double[] measured,
            double[] corrected,
            @Nullable List<@Nullable Double> limit,
            List<LimitAnswer> limits) {

        static One of(
                CorrectedSweep sweep,
                Optional<Requirement> requirement,
                List<Requirement> requirements,
                Wording wording) {
            return new One(
                    sweep.property().id(),
                    sweep.unit(),
                    sweep.subject().pair(),
                    sweep.subject().partner(),
                    sweep.subject().end() == null ? null : sweep.subject().end().word(),
                    sweep.derived(),
                    new Frequencies(MEGAHERTZ, sweep.grid().toArray()),
                    sweep.measured(),
                    sweep.corrected(),
                    requirement.isPresent()
                            ? along(requirement.get(), sweep.grid().toArray())
                            : null,
                    requirements.stream()
                            .map(one -> LimitAnswer.of(one, sweep.grid().toArray(), wording))
                            .toList());
        }

        private static List<@Nullable Double> along(Requirement requirement, double[] megahertz) {
            List<@Nullable Double> limits = new ArrayList<>(megahertz.length);
            for (double f : megahertz) {
                limits.add(holds(requirement.domain(), f) ? bound(requirement.limit(), f) : null);
            }
            return limits;
        }

        private static Double bound(Limit limit, double megahertz) {
            return limit.upper().or(limit::lower).orElseThrow().at(megahertz);
        }
    }

    /** Frequencies with their unit. */
    record Frequencies(String unit, double[] values) {}

    /**
     * The sweeps of a property.
     *
     * @param requirement the one to draw where only one can be
     * @param requirements all that bind the property, in the set's order
     */
    static SweepsAnswer of(
            Property property,
            List<CorrectedSweep> sweeps,
            Optional<Requirement> requirement,
            List<Requirement> requirements,
            Wording wording) {
        double[] frequencies = sweeps.stream()
                .flatMapToDouble(sweep -> Arrays.stream(sweep.grid().toArray()))
                .sorted()
                .distinct()
                .toArray();
        return new SweepsAnswer(
                property.id(),
                sweeps.get(0).unit(),
                MEGAHERTZ,
                sweeps.stream().map(sweep -> SweepAnswer.of(sweep, wording)).toList(),
                requirement
                        .map(found -> LimitAnswer.of(found, frequencies, wording))
                        .orElse(null),
                requirements.stream()
                        .map(one -> LimitAnswer.of(one, frequencies, wording))
                        .toList(),
                wording.title(property),
                wording.frequencyAxis());
    }

    private static boolean holds(Domain domain, double megahertz) {
        return !(domain instanceof Domain.NoFrequency) && domain.holds(megahertz);
    }
}
