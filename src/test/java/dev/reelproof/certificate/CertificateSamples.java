package dev.reelproof.certificate;

import dev.reelproof.judgement.CorrectedSweep;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Uncertainty;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.Bound;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.GridRule;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Limit;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.PairCount;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RequirementBuilder;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.limit.Segment;
import dev.reelproof.limit.Source;
import dev.reelproof.measurement.Conductor;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Equipment;
import dev.reelproof.measurement.LengthMarks;
import dev.reelproof.measurement.NetworkTerms;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Invented certificates that look like cable: loss that grows with the root of frequency, crosstalk with resonances, return
 * loss with ripple. The figures are ours and prove nothing about any limit.
 */
public final class CertificateSamples {
    private static final Source OURS = new Source("invented for tests", true);
    private static final double FIRST = 1;
    private static final double LAST = 500;

    private final int pairs;
    private final FrequencyGrid grid;
    private final List<Requirement> requirements = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private final List<CorrectedSweep> sweeps = new ArrayList<>();

    private CertificateSamples(int pairs, int points) {
        this.pairs = pairs;
        double[] megahertz = new double[points];
        for (int i = 0; i < points; i++) {
            megahertz[i] = FIRST + (LAST - FIRST) * i / (points - 1);
        }
        this.grid = FrequencyGrid.ofMegahertz(megahertz);
    }

    public static Issuing issuing() {
        return new Issuing(
                CertificateNumber.of("north", 2026, 123),
                1,
                OffsetDateTime.parse("2026-03-02T15:20:00Z"),
                new Plant(
                        "Northfield Cable Works (demo plant)", List.of("1 Example Street", "Northfield, Exampleland")));
    }

    /** A declaration of the plant's own kind in a language. */
    public static Declaration declaredIn(Locale language) {
        return new Declaration(
                CertificateType.TEST_CERTIFICATE,
                language,
                Declaration.Sheet.A4,
                Declaration.UnitSystem.BOTH,
                null,
                false);
    }

    public static Item item() {
        return markedItem(null);
    }

    /** The item with these marks on its jacket. */
    public static Item markedItem(@Nullable LengthMarks lengthMarks) {
        return new Item(
                "R-2026-00417",
                1000,
                "ft",
                Length.of(1000, "ft"),
                lengthMarks,
                "Example Networks (invented customer)",
                "SO-4711, line 3",
                null);
    }

    public static TestConditions conditions() {
        return new TestConditions(
                "0f8c2f4e-51c7-4a4e-9d0a-0b1c6a3e7d55",
                "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
                87.8,
                "°F",
                Temperature.of(87.8, "°F"),
                OffsetDateTime.parse("2026-03-02T14:05:00Z"),
                OffsetDateTime.parse("2026-03-02T14:09:30Z"),
                "bay-2",
                "T. Example",
                List.of(
                        new Equipment("na-07", LocalDate.parse("2026-12-31"), Set.of()),
                        new Equipment("bridge-02", LocalDate.parse("2027-01-15"), Set.of()),
                        new Equipment("hv-1", null, Set.of())));
    }

    public static Product product(int pairs) {
        return new Product(
                "HD6A-4P",
                pairs + "-pair 23 AWG category 6A horizontal cable, riser (demo product)",
                "category-6a-cable",
                pairs,
                "23 AWG solid bare copper",
                0.68,
                Map.of(),
                List.of());
    }

    /** A reel of so many pairs with so many points a sweep, every requirement of its set and eight plots. */
    public static CertificateSamples of(int pairs, int points) {
        CertificateSamples sample = new CertificateSamples(pairs, points);
        sample.fill();
        return sample;
    }

    /** The same, declared and printed otherwise, for another customer. */
    public CertificateContent content(Declaration declaration, Circumstances circumstances, String customer) {
        Item item = item();
        return content(
                declaration,
                circumstances,
                new Item(
                        item.reel(),
                        item.lengthSent(),
                        item.lengthUnit(),
                        item.length(),
                        item.lengthMarks(),
                        customer,
                        item.order(),
                        null));
    }

    /** The same of another item. */
    public CertificateContent content(Declaration declaration, Circumstances circumstances, Item item) {
        return CertificateContent.of(
                issuing(),
                declaration,
                circumstances,
                item,
                conditions(),
                product(pairs),
                judgement(Verdict.ACCEPTED),
                limitSet());
    }

    /** The same of another reel, under another number. */
    public CertificateContent content(Declaration declaration, int serial, String reel) {
        Item item = item();
        Issuing issuing = issuing();
        return CertificateContent.of(
                new Issuing(
                        CertificateNumber.of("north", 2026, serial),
                        issuing.issue(),
                        issuing.issued(),
                        issuing.plant()),
                declaration,
                Circumstances.NONE,
                new Item(
                        reel,
                        item.lengthSent(),
                        item.lengthUnit(),
                        item.length(),
                        item.lengthMarks(),
                        item.customer(),
                        item.order(),
                        item.consignee()),
                conditions(),
                product(pairs),
                judgement(Verdict.ACCEPTED),
                limitSet());
    }

    public CertificateContent content() {
        return CertificateContent.of(
                issuing(), item(), conditions(), product(pairs), judgement(Verdict.ACCEPTED), limitSet());
    }

    /**
     * A certificate by a whole limit set without sweeps: each requirement that holds for the pair count met with an invented
     * figure a little on the good side of its limit.
     */
    public static CertificateContent meetingAll(LimitSet set, int pairs) {
        return contentOf(set, judgementMeetingAll(set, pairs), pairs);
    }

    /** The judgement of such a certificate. */
    public static Judgement judgementMeetingAll(LimitSet set, int pairs) {
        List<Finding> findings = set.requirements().stream()
                .filter(requirement ->
                        requirement.pairs().map(range -> range.holds(pairs)).orElse(true))
                .map(CertificateSamples::met)
                .toList();
        return judgementOf(set, findings);
    }

    /** A judgement by a set that accepts, without sweeps. */
    public static Judgement judgementOf(LimitSet set, List<Finding> findings) {
        return new Judgement(
                set.id(), set.revision(), set.sha256(), "0.1.0", Verdict.ACCEPTED, findings, List.of(), null);
    }

    /** The certificate of a judgement. */
    public static CertificateContent contentOf(LimitSet set, Judgement judgement, int pairs) {
        return CertificateContent.of(issuing(), item(), conditions(), product(pairs), judgement, set);
    }

    /** A certificate whose only requirement is met by less than the guard band. */
    public static CertificateContent conditional() {
        DecisionRule rule = new DecisionRule(DecisionRule.Form.GUARD_BAND_FOUR, 1);
        Requirement requirement = RequirementBuilder.of(
                        Property.MUTUAL_CAPACITANCE,
                        Limit.atMost(new Bound.Constant(5.6, 1)),
                        new Domain.NoFrequency(),
                        "nF/100 m")
                .build();
        Figure figure = new Figure(
                Subject.ofPair(1),
                null,
                null,
                5.55,
                "nF/100 m",
                5.55,
                5.55,
                5.6,
                0.05,
                "nF/100 m",
                false,
                new Uncertainty(0.12, 2, 0.9391),
                List.of());
        Finding finding = new Finding(
                requirement.id(), requirement.property(), Outcome.CONDITIONAL_PASS, null, figure, 4, List.of(), rule);
        LimitSet set = limitSetOf(List.of(requirement));
        return contentOf(set, judgementOf(set, List.of(finding)), 4);
    }

    private static Finding met(Requirement requirement) {
        Double megahertz = requirement.domain() instanceof Domain.Spot spot
                ? Double.valueOf(spot.megahertz())
                : requirement.domain() instanceof Domain.Range range ? Double.valueOf(range.to()) : null;
        double at = megahertz == null ? Double.NaN : megahertz;
        Bound bound = requirement.limit().lower().or(requirement.limit()::upper).orElseThrow();
        double sign = requirement.limit().lower().isPresent() ? 1 : -1;
        double limit = bound.at(at);
        double value = limit + sign * Math.abs(limit) / 100;
        Figure figure = new Figure(
                Subject.ofReel(),
                null,
                megahertz,
                value,
                requirement.property().canonicalUnit(),
                value,
                value,
                limit,
                Math.abs(value - limit),
                requirement.unit().text(),
                false,
                null,
                List.of());
        return new Finding(
                requirement.id(),
                requirement.property(),
                Outcome.PASS,
                null,
                figure,
                1,
                List.of(),
                DecisionRule.SIMPLE_ACCEPTANCE);
    }

    /** A figure on its limit. */
    public static Figure figure(Property property) {
        String unit = property.canonicalUnit();
        return new Figure(Subject.ofReel(), null, null, 1.0, unit, 1, 1, 1, 0, unit, false, null, List.of());
    }

    /** A judgement without sweeps that has the given findings. */
    public static Judgement judgementOf(Verdict verdict, Finding... findings) {
        return new Judgement("category-6a-cable", 1, sha256(), "0.1.0", verdict, List.of(findings), List.of(), null);
    }

    private static String sha256() {
        return "2c26b46b68ffc68ff99b453c1d30413413422d706483bfa0f98a5e886266e7ae";
    }

    public Judgement judgement(Verdict verdict) {
        return new Judgement("category-6a-cable", 1, sha256(), "0.1.0", verdict, findings, sweeps, null);
    }

    LimitSet limitSet() {
        return limitSet(1);
    }

    LimitSet limitSet(int revision) {
        return limitSet(revision, requirements);
    }

    /** An invented limit set. */
    public static LimitSet limitSetOf(List<Requirement> requirements) {
        return limitSet(1, requirements);
    }

    private static LimitSet limitSet(int revision, List<Requirement> requirements) {
        return new LimitSet(
                "category-6a-cable",
                revision,
                LocalDate.parse("2026-01-01"),
                "Four-pair horizontal cable, category 6A",
                new PairCount(1, 4200),
                Temperature.ofCelsius(20),
                Length.ofMetres(100),
                RoundingRule.ABSOLUTE,
                new GridRule(1.0 / 40, 2),
                requirements,
                Optional.empty(),
                List.of(
                        new LimitSet.LeftOut("TCL and EL TCTL", "a matter of type tests in this plant"),
                        new LimitSet.LeftOut("alien crosstalk", "measured on a bundle of cables, not on a reel")),
                NetworkTerms.USUAL,
                sha256(),
                "",
                DecisionRule.SIMPLE_ACCEPTANCE);
    }

    private void fill() {
        scalar(
                Property.CONDUCTOR_RESISTANCE,
                "ohm/100 m",
                Limit.atMost(new Bound.Constant(9.38, 2)),
                Subject.ofConductor(3, Conductor.B),
                21.92,
                6.9042,
                2 * pairs,
                new LawSpec("copper-temperature", Map.of("coefficient", 0.00393)),
                new LawSpec("linear-length", Map.of()));
        scalar(
                Property.RESISTANCE_UNBALANCE,
                "%",
                Limit.atMost(new Bound.Constant(5, 0)),
                Subject.ofPair(2),
                0.83,
                0.83,
                pairs);
        scalar(
                Property.MUTUAL_CAPACITANCE,
                "nF/100 m",
                Limit.atMost(new Bound.Constant(5.6, 1)),
                Subject.ofPair(1),
                15.4,
                5.0525,
                pairs,
                new LawSpec("linear-length", Map.of()));
        scalar(
                Property.CAPACITANCE_UNBALANCE_TO_GROUND,
                "pF/100 m",
                Limit.atMost(new Bound.Constant(330, 0)),
                Subject.ofPair(4),
                288,
                94.488,
                pairs,
                new LawSpec("linear-length", Map.of()));
        sweep(
                Property.INSERTION_LOSS,
                "dB/100 m",
                Limit.atMost(new Bound.Curve(List.of(new Segment.RootPolynomial(1, 500, 0, 1.82, 0.0091, 0.25)))),
                pairLines(false),
                new LawSpec("unscreened-loss-temperature", Map.of("to-40", 0.004, "above-40", 0.006)),
                new LawSpec("linear-length", Map.of()));
        sweep(
                Property.NEXT,
                "dB",
                slope(44.3, -15),
                combinationLines(),
                new LawSpec("near-end-crosstalk-length", Map.of("longer", 0.0)));
        sweep(
                Property.PS_NEXT,
                "dB",
                slope(42.3, -15),
                pairLines(true),
                new LawSpec("near-end-crosstalk-length", Map.of("longer", 0.0)));
        sweep(
                Property.ACR_F,
                "dB",
                slope(27.8, -20),
                orderedLines(),
                new LawSpec("far-end-crosstalk-length", Map.of()));
        sweep(
                Property.PS_ACR_F,
                "dB",
                slope(24.8, -20),
                pairLines(true),
                new LawSpec("far-end-crosstalk-length", Map.of()));
        sweep(
                Property.RETURN_LOSS,
                "dB",
                Limit.atLeast(new Bound.Curve(List.of(
                        new Segment.LogSlope(1, 10, 1, 20, 5),
                        new Segment.LogSlope(10, 20, 10, 25, 0),
                        new Segment.LogSlope(20, 500, 20, 25, -7)))),
                pairLines(true));
        sweep(
                Property.PROPAGATION_DELAY,
                "ns/100 m",
                Limit.atMost(new Bound.Curve(List.of(new Segment.RootPolynomial(1, 500, 534, 0, 0, 36)))),
                pairLines(false),
                new LawSpec("linear-length", Map.of()));
        sweep(
                Property.DELAY_SKEW,
                "ns/100 m",
                Limit.atMost(new Bound.Constant(45, 0)),
                List.of(Subject.ofReel()),
                new LawSpec("linear-length", Map.of()));
        scalar(
                Property.DIELECTRIC_WITHSTAND,
                "count",
                Limit.atMost(new Bound.Constant(0, 0)),
                Subject.ofReel(),
                0,
                0,
                1);
        scalar(Property.SPARK_FAULTS, "count", Limit.atMost(new Bound.Constant(0, 0)), Subject.ofReel(), 0, 0, 1);
    }

    private static Limit slope(double at100, double perDecade) {
        return Limit.atLeast(new Bound.Curve(List.of(new Segment.LogSlope(1, 500, 100, at100, perDecade))));
    }

    private List<Subject> pairLines(boolean ends) {
        List<Subject> subjects = new ArrayList<>();
        for (int pair = 1; pair <= pairs; pair++) {
            add(subjects, Subject.ofPair(pair), ends);
        }
        return subjects;
    }

    private List<Subject> combinationLines() {
        List<Subject> subjects = new ArrayList<>();
        for (int pair = 1; pair <= pairs; pair++) {
            for (int partner = pair + 1; partner <= pairs; partner++) {
                add(subjects, Subject.ofCombination(pair, partner), true);
            }
        }
        return subjects;
    }

    private List<Subject> orderedLines() {
        List<Subject> subjects = new ArrayList<>();
        for (int pair = 1; pair <= pairs; pair++) {
            for (int partner = 1; partner <= pairs; partner++) {
                if (partner != pair) {
                    add(subjects, Subject.ofCombination(pair, partner), true);
                }
            }
        }
        return subjects;
    }

    private static void add(List<Subject> subjects, Subject subject, boolean ends) {
        if (ends) {
            subjects.add(subject.at(End.NEAR));
            subjects.add(subject.at(End.FAR));
        } else {
            subjects.add(subject);
        }
    }

    private Requirement requirement(Property property, String unit, Limit limit, Domain domain, LawSpec... laws) {
        RequirementBuilder builder =
                RequirementBuilder.of(property, limit, domain, unit).laws(laws).source(OURS);
        return property == Property.DIELECTRIC_WITHSTAND
                ? builder.condition("2.5 kV d.c. for 2 s").build()
                : builder.build();
    }

    private void scalar(
            Property property,
            String unit,
            Limit limit,
            Subject subject,
            double measured,
            double value,
            int points,
            LawSpec... laws) {
        requirements.add(requirement(property, unit, limit, new Domain.NoFrequency(), laws));
        double bound = limit.upper().orElseThrow().at(Double.NaN);
        Figure figure = new Figure(
                subject,
                null,
                null,
                measured,
                property.canonicalUnit(),
                value,
                value,
                bound,
                bound - value,
                unit,
                property == Property.RESISTANCE_UNBALANCE,
                null,
                List.of());
        findings.add(new Finding(
                property.id(),
                property,
                Outcome.PASS,
                null,
                figure,
                points,
                List.of(),
                DecisionRule.SIMPLE_ACCEPTANCE));
    }

    private void sweep(Property property, String unit, Limit limit, List<Subject> subjects, LawSpec... laws) {
        requirements.add(requirement(property, unit, limit, new Domain.Range(FIRST, LAST), laws));
        Bound bound = limit.lower().or(limit::upper).orElseThrow();
        double sign = limit.lower().isPresent() ? 1 : -1;
        boolean derived =
                Set.of(Property.PS_NEXT, Property.PS_ACR_F, Property.DELAY_SKEW).contains(property);
        Figure worst = null;
        for (Subject subject : subjects) {
            DoubleUnaryOperator curve = curve(property, bound, subject);
            double[] values = new double[grid.size()];
            for (int i = 0; i < values.length; i++) {
                double megahertz = grid.megahertz(i);
                values[i] = curve.applyAsDouble(megahertz);
                double margin = sign * (values[i] - bound.at(megahertz));
                if (worst == null || margin < worst.margin()) {
                    worst = new Figure(
                            subject,
                            null,
                            megahertz,
                            values[i],
                            property.canonicalUnit(),
                            values[i],
                            values[i],
                            bound.at(megahertz),
                            margin,
                            unit,
                            derived,
                            null,
                            List.of());
                }
            }
            sweeps.add(new CorrectedSweep(property, subject, grid, values, values, unit, derived));
        }
        findings.add(new Finding(
                property.id(),
                property,
                Outcome.PASS,
                null,
                worst,
                subjects.size() * grid.size(),
                List.of(),
                DecisionRule.SIMPLE_ACCEPTANCE));
    }

    /** A curve on the good side of its limit, different for each subject. */
    private static DoubleUnaryOperator curve(Property property, Bound bound, Subject subject) {
        int pair = subject.pair() == null ? 0 : subject.pair();
        int partner = subject.partner() == null ? 0 : subject.partner();
        double phase = 1.7 * pair + 0.9 * partner + (subject.end() == End.FAR ? 2.3 : 0);
        double period = 9 + 1.3 * (pair % 7) + 0.7 * (partner % 5);
        return switch (property) {
            case INSERTION_LOSS -> f ->
                    bound.at(f) * (0.93 + 0.008 * (pair % 5)) * (1 + 0.004 * Math.sin(f / period + phase));
            case PROPAGATION_DELAY -> f -> 491 + 4.2 * (pair % 5) + 34 / Math.sqrt(f) + 0.2 * Math.sin(f / 20);
            case DELAY_SKEW -> f -> 16.8 + 0.4 * Math.sin(f / 20);
            case RETURN_LOSS -> f -> bound.at(f)
                    + 4.2
                    + 2.6 * Math.sin(f / period + phase) * Math.sin(f / (3.1 * period) + 2 * phase)
                    + 1.2 * Math.sin(f / 2.9 + phase);
            default -> f -> bound.at(f)
                    + 5.5
                    + 0.9 * ((pair * 3 + partner) % 6)
                    - 6
                            * Math.log10(Math.abs(0.55 + 0.45 * Math.sin(f / (period * 0.6) + phase))
                                    + 0.25
                                    + 0.2 * Math.sin(f / 3.7 + phase));
        };
    }
}
