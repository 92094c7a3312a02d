package dev.reelproof.api.limits;

import dev.reelproof.api.Quantity;
import dev.reelproof.limit.Allowance;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Particulars;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.TemperatureWindow;
import dev.reelproof.limit.WrongRevision;
import dev.reelproof.measurement.NetworkTerms;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** A limit set with all that it demands. */
record LimitSetAnswer(
        String id,
        int revision,
        String title,
        LocalDate effective,
        String sha256,
        PairCount pairs,
        Quantity referenceTemperature,
        Quantity referenceLength,
        String rounding,
        NetworkAnswer network,
        String decisionRule,
        List<RequirementAnswer> requirements,
        @Nullable AllowanceAnswer allowance,
        List<LimitSet.LeftOut> leftOut) {

    /** A limit set in a list. */
    @Schema(name = "LimitSetLine")
    record Line(
            String id,
            int revision,
            String title,
            LocalDate effective,
            String sha256,
            @Schema(nullable = true, description = "what the plant found wrong with it; null when nothing") @Nullable
                    String foundWrong) {
        static Line of(LimitSet set, List<WrongRevision> foundWrong) {
            return new Line(
                    set.id(),
                    set.revision(),
                    set.title(),
                    set.effective(),
                    set.sha256(),
                    foundWrong.stream()
                            .filter(wrong -> wrong.limitSet().equals(set.id()) && wrong.revision() == set.revision())
                            .map(WrongRevision::reason)
                            .findFirst()
                            .orElse(null));
        }
    }

    /** How network-analyser data is read by the set, in the words of its file. */
    @Schema(
            description =
                    "How network-analyser data is read by the set, whether its file says so or leaves it at what is usual.")
    record NetworkAnswer(
            @Schema(description = "reference impedance of the differential mode") Quantity differential,
            @Schema(description = "reference impedance of the common mode") Quantity common,
            @Schema(
                            enumeration = {"disturbed", "disturbing"},
                            description = "the pair whose insertion loss is taken from the far-end crosstalk for ACR-F")
                    String acrFLoss) {
        static NetworkAnswer of(NetworkTerms terms) {
            return new NetworkAnswer(
                    new Quantity(terms.differentialOhm(), "ohm"),
                    new Quantity(terms.commonOhm(), "ohm"),
                    terms.lossOfDisturbing() ? "disturbing" : "disturbed");
        }
    }

    /** A list of limit sets. */
    @Schema(name = "LimitSetLines")
    record Lines(List<Line> limitSets) {}

    /** A range of frequency, MHz. */
    record DomainAnswer(double from, double to, String unit) {
        static @Nullable DomainAnswer of(Domain domain) {
            if (domain instanceof Domain.Range range) {
                return new DomainAnswer(range.from(), range.to(), "MHz");
            }
            return domain instanceof Domain.Spot spot
                    ? new DomainAnswer(spot.megahertz(), spot.megahertz(), "MHz")
                    : null;
        }
    }

    /** A correction law with its coefficients. */
    record LawAnswer(String law, Map<String, Double> parameters) {
        static LawAnswer of(LawSpec law) {
            return new LawAnswer(law.name(), new TreeMap<>(law.parameters()));
        }
    }

    /** A requirement. */
    record RequirementAnswer(
            String requirement,
            String property,
            String statistic,
            String sense,
            @Nullable String upper,
            @Nullable String lower,
            String unit,
            @Nullable DomainAnswer domain,
            List<LawAnswer> laws,
            @Nullable String denominator,
            String scope,
            @Nullable PairCount pairs,
            @Nullable PairCount unitPairs,
            String source,
            @Nullable String condition,
            String decisionRule,
            BeyondTheLimit beyondTheLimit) {

        static RequirementAnswer of(Requirement requirement, LimitSet set) {
            return new RequirementAnswer(
                    requirement.id(),
                    requirement.property().id(),
                    requirement.statistic().word(),
                    requirement.limit().sense(),
                    requirement.limit().upper().map(LimitSetAnswer::formula).orElse(null),
                    requirement.limit().lower().map(LimitSetAnswer::formula).orElse(null),
                    requirement.unit().text(),
                    DomainAnswer.of(requirement.domain()),
                    requirement.laws().stream().map(LawAnswer::of).toList(),
                    requirement.denominator().orElse(null),
                    requirement.scope().word(),
                    requirement.pairs().orElse(null),
                    requirement.unitPairs().orElse(null),
                    requirement.source().words(),
                    requirement.condition().orElse(null),
                    set.decisionRuleOf(requirement).words(),
                    BeyondTheLimit.of(requirement));
        }
    }

    /** What a requirement says beyond its limit, as far as it says something of it. */
    record BeyondTheLimit(
            boolean required,
            @Nullable Quantity leastRoundTripLoss,
            @Nullable Quantity leastTestedLength,
            @Nullable Quantity leastTestedLengthToReject,
            @Nullable Sample sample,
            @Nullable String each,
            @Nullable Boolean warmerPassStands,
            @Schema(
                            enumeration = {"reel", "unit"},
                            description = "whether a statistic is one of the whole reel, or one for each unit")
                    String per) {

        /** So many pairs may stand for all where their average lies within two figures. */
        @Schema(name = "SampledPairs")
        record Sample(int pairs, double lower, double upper) {}

        static BeyondTheLimit of(Requirement requirement) {
            Particulars said = requirement.particulars();
            return new BeyondTheLimit(
                    said.required(),
                    said.leastRoundTripLoss().isPresent()
                            ? new Quantity(said.leastRoundTripLoss().getAsDouble(), "dB")
                            : null,
                    said.testedLength()
                            .map(tested -> new Quantity(tested.least().metres(), "m"))
                            .orElse(null),
                    said.testedLength()
                            .map(tested -> new Quantity(tested.leastToReject().metres(), "m"))
                            .orElse(null),
                    said.sampling()
                            .map(one -> new Sample(
                                    one.pairs(),
                                    one.lower().value(),
                                    one.upper().value()))
                            .orElse(null),
                    said.each()
                            .map(each -> each.limit().sense() + " "
                                    + formula(each.limit()
                                            .upper()
                                            .or(each.limit()::lower)
                                            .orElseThrow())
                                    + " " + each.unit().text())
                            .orElse(null),
                    requirement
                            .temperatureWindow()
                            .map(TemperatureWindow::warmerPassStands)
                            .orElse(null),
                    said.per().word());
        }
    }

    /** How many pairs may vary. */
    record AllowanceAnswer(List<Allowance.Step> steps, Map<String, Double> ceilings, String source) {
        static AllowanceAnswer of(Allowance allowance) {
            Map<String, Double> ceilings = new TreeMap<>();
            allowance.ceilings().forEach((property, bound) -> ceilings.put(property.id(), bound.value()));
            return new AllowanceAnswer(
                    allowance.steps(), ceilings, allowance.source().words());
        }
    }

    /** The limit at one frequency; {@code limit} is absent where there are two bounds. */
    @Schema(name = "LimitAtFrequency")
    record At(
            @Nullable Double limit,
            @Nullable Double lower,
            @Nullable Double upper,
            String unit,
            String sense,
            String requirement,
            String statistic,
            @Nullable Quantity frequency,
            String formula,
            String source,
            List<String> requirements) {

        /**
         * @param megahertz the frequency, MHz; empty where the limit has none
         * @param ids all requirements that were meant
         */
        static At of(Requirement requirement, Optional<Double> megahertz, List<String> ids) {
            double f = megahertz.orElse(Double.NaN);
            Optional<Double> upper = requirement.limit().upper().map(bound -> bound.at(f));
            Optional<Double> lower = requirement.limit().lower().map(bound -> bound.at(f));
            boolean both = upper.isPresent() && lower.isPresent();
            return new At(
                    both ? null : upper.or(() -> lower).orElseThrow(),
                    lower.orElse(null),
                    upper.orElse(null),
                    requirement.unit().text(),
                    requirement.limit().sense(),
                    requirement.id(),
                    requirement.statistic().word(),
                    megahertz.map(value -> new Quantity(value, "MHz")).orElse(null),
                    requirement
                            .limit()
                            .upper()
                            .or(requirement.limit()::lower)
                            .orElseThrow()
                            .formula(f),
                    requirement.source().words(),
                    ids);
        }
    }

    static LimitSetAnswer of(LimitSet set) {
        return new LimitSetAnswer(
                set.id(),
                set.revision(),
                set.title(),
                set.effective(),
                set.sha256(),
                set.pairs(),
                new Quantity(set.referenceTemperature().celsius(), "°C"),
                new Quantity(set.referenceLength().metres(), "m"),
                set.rounding().word(),
                NetworkAnswer.of(set.networkTerms()),
                set.decisionRule().words(),
                set.requirements().stream()
                        .map(requirement -> RequirementAnswer.of(requirement, set))
                        .toList(),
                set.allowance().map(AllowanceAnswer::of).orElse(null),
                set.leftOut());
    }

    private static String formula(Bound bound) {
        return bound instanceof Bound.Curve curve ? curve.describe() : bound.formula(Double.NaN);
    }
}
