package dev.reelproof.api.suspect;

import dev.reelproof.analysis.CountTable;
import dev.reelproof.analysis.DoseEvidence;
import dev.reelproof.analysis.Evidence;
import dev.reelproof.analysis.Exposure;
import dev.reelproof.analysis.Interval;
import dev.reelproof.analysis.ReelSelection;
import dev.reelproof.analysis.StrataBy;
import dev.reelproof.analysis.Suspect;
import dev.reelproof.analysis.SuspectRanking;
import dev.reelproof.analysis.TestCause;
import dev.reelproof.analysis.TracedPopulation;
import dev.reelproof.app.suspect.RankSuspects;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/** Suspects as they are answered. */
@Schema(name = "Suspects")
record SuspectAnswer(
        @Schema(
                        description =
                                "whether a bay, an instrument, a technician or a day of test is named and explains what was found at"
                                        + " least as well as anything upstream")
                boolean testIsLikelierCause,
        @Schema(nullable = true, description = "what of the test it is; null unless testIsLikelierCause") @Nullable
                TestCauseLine testCause,
        @Schema(description = "what is named first, by pWithinStrata; then the rest, by p") List<Line> suspects,
        String plant,
        String property,
        @Schema(nullable = true) @Nullable String product,
        @Schema(nullable = true) @Nullable OffsetDateTime from,
        @Schema(nullable = true) @Nullable OffsetDateTime to,
        @Schema(enumeration = {"failures", "margins"}) String evidence,
        String method,
        @Schema(
                        enumeration = {"week", "none"},
                        description = "which reels are compared with each other")
                String strata,
        @Schema(description = "how they are compared, and what decides") String strataMethod,
        @Schema(description = "in how many weeks of test the reels are compared; 1 without strata") int strataCount,
        String correction,
        @Schema(description = "the rate of false alarms among suspects with q at or below it") double level,
        int minimumExposed,
        @Schema(description = "the reels of the population, each by its newest record within the time") int reels,
        int failing,
        LeftOut leftOut,
        @Schema(description = "different things that the reels met") int exposures,
        @Schema(description = "of these, what every reel met: nothing to compare with") int metByEveryReel,
        @Schema(description = "of these, what fewer reels met than the minimum") int metByTooFew,
        @Schema(description = "the rest, what the same reels met joined") int groups,
        @Schema(description = "groups that could be significant at all: the m of the correction") int tested,
        String note) {
    private static final String CORRECTION =
            "Benjamini-Hochberg over all tested groups; what exactly the same reels met is one group";
    private static final String NOTE =
            "An association, not proof of a cause: what the reels have in common besides may be behind it."
                    + " Confirm by a test of kept samples before acting on it.";

    /** Reels tested within the time that are not in the population. */
    @Schema(name = "SuspectsLeftOut")
    record LeftOut(
            @Schema(description = "the property was not tested, or its margin is not known where it is needed")
                    int notTested,
            @Schema(description = "nothing was reported of what they were made from") int untraced) {}

    /** The test as the cause. */
    @Schema(name = "TestCause")
    record TestCauseLine(
            @Schema(description = "in words, with what to do") String sentence,
            @Schema(description = "what of the test, with all that the same reels met") List<Met> group,
            @Schema(description = "what lies upstream and is explained by it") List<Met> explains,
            @Schema(description = "what lies upstream and these reels do not tell from it")
                    List<Met> cannotBeToldFrom) {
        static TestCauseLine of(TestCause cause, Evidence evidence) {
            return new TestCauseLine(
                    Wording.english().testCause(cause, evidence),
                    Met.all(cause.suspect().group()),
                    Met.all(cause.explains()),
                    Met.all(cause.cannotBeToldFrom()));
        }
    }

    /** How failing grows with the share of a reel that was made from a lot. */
    @Schema(name = "DoseEvidence")
    record Dose(
            @Schema(description = "the lot, as factor and value") Met lot,
            @Schema(description = "exposed reels of which the share is known from the quantities of their pedigree")
                    int known,
            @Schema(description = "the other exposed reels") int unknown,
            @Schema(
                            description =
                                    "the chance of such growth among the exposed reels without an effect: Cochran-Armitage test for"
                                            + " trend within the strata, one-sided, exact where feasible. It decides nothing")
                    double p,
            @Schema(description = "the reels by their share, the least first") List<Band> bands) {
        static Dose of(DoseEvidence dose) {
            return new Dose(
                    Met.of(dose.lot()),
                    dose.known(),
                    dose.unknown(),
                    dose.p(),
                    dose.bands().stream()
                            .map(band -> new Band(band.above(), band.upTo(), band.reels(), band.failing()))
                            .toList());
        }
    }

    /** Reels with shares in a range. */
    @Schema(name = "DoseBand")
    record Band(
            @Schema(description = "the shares are above this, percent") int abovePercent,
            @Schema(description = "and up to this, itself included, percent") int upToPercent,
            int reels,
            int failing) {}

    /** What reels can have in common. */
    @Schema(name = "Exposure")
    record Met(String factor, String value) {
        static Met of(Exposure exposure) {
            return new Met(exposure.factor().word(), exposure.value());
        }

        static List<Met> all(List<Exposure> exposures) {
            return exposures.stream().map(Met::of).toList();
        }
    }

    /** An estimate with its 95 % interval. */
    @Schema(name = "Estimate")
    record Estimate(
            double estimate,
            @Schema(nullable = true, description = "null where the reels are too few for an end") @Nullable
                    Double lower,
            @Schema(nullable = true) @Nullable Double upper) {
        static Estimate of(Interval interval) {
            return new Estimate(interval.estimate(), finite(interval.lower()), finite(interval.upper()));
        }

        private static @Nullable Double finite(double value) {
            return Double.isFinite(value) ? value : null;
        }
    }

    /** What margins say of a suspect. */
    @Schema(name = "MarginEvidence")
    record Margins(
            @Schema(
                            description =
                                    "share of pairs of an exposed and another reel in which the exposed one has the lower margin")
                    double shareLower,
            @Schema(description = "how much higher (negative: lower) the margins of exposed reels lie") Estimate shift,
            @Schema(nullable = true) @Nullable String unit) {}

    /** One suspect. */
    @Schema(name = "Suspect")
    record Line(
            String factor,
            String value,
            int exposed,
            int exposedFailing,
            int others,
            int othersFailing,
            @Schema(
                            enumeration = {"test", "upstream", "both"},
                            description = "where it lies")
                    String side,
            @Schema(description = "among all reels, of the counts in this line") double p,
            @Schema(
                            description =
                                    "with each reel compared within its stratum; it decides q and what is named. p without strata")
                    double pWithinStrata,
            @Schema(description = "of pWithinStrata, for all that were tested; 1 where it was not tested") double q,
            @Schema(description = "what exactly the same reels met: no test of them tells these apart")
                    List<String> inseparableFrom,
            @Schema(description = "the suspect and what it is inseparable from, with their factors") List<Met> group,
            @Schema(description = "false where so few reels could not be significant whatever came out") boolean tested,
            @Schema(description = "whether q is at or below the level") boolean named,
            @Schema(
                            description =
                                    "whether it would be named among all reels, but not within the weeks: it cannot be told from what"
                                            + " else changed in time")
                    boolean onlyInTime,
            @Schema(description = "failing share of exposed less that of other reels") Estimate riskDifference,
            @Schema(nullable = true, description = "of the sample; null where there is none to divide by") @Nullable
                    Double oddsRatio,
            @Schema(nullable = true, description = "that the strata have in common (Mantel-Haenszel)") @Nullable
                    Double oddsRatioWithinStrata,
            @Schema(nullable = true) @Nullable Margins margins,
            @Schema(nullable = true, description = "null where shares are not known or all the same") @Nullable
                    Dose dose,
            @Schema(
                            description =
                                    "suspects of nearly the same reels: with either held fixed, nothing significant is left of the other")
                    List<Met> cannotBeToldFrom,
            @Schema(
                            description =
                                    "suspects with which held fixed nothing significant is left of this one, but not the other way round")
                    List<Met> explainedBy) {

        static Line of(Suspect suspect, double level, @Nullable String unit) {
            CountTable counts = suspect.counts();
            return new Line(
                    suspect.first().factor().word(),
                    suspect.first().value(),
                    counts.exposed(),
                    counts.exposedFailing(),
                    counts.others(),
                    counts.othersFailing(),
                    suspect.side().word(),
                    suspect.p(),
                    suspect.pWithinStrata(),
                    suspect.q(),
                    suspect.group().stream().skip(1).map(Exposure::value).toList(),
                    Met.all(suspect.group()),
                    suspect.tested(),
                    suspect.tested() && suspect.q() <= level,
                    suspect.onlyInTime(),
                    Estimate.of(suspect.riskDifference()),
                    counts.oddsRatio().isPresent() ? counts.oddsRatio().getAsDouble() : null,
                    suspect.oddsRatioWithinStrata(),
                    suspect.margins() == null
                            ? null
                            : new Margins(
                                    suspect.margins().shareLower(),
                                    Estimate.of(suspect.margins().shift()),
                                    unit),
                    suspect.dose() == null ? null : Dose.of(suspect.dose()),
                    Met.all(suspect.cannotBeToldFrom()),
                    Met.all(suspect.explainedBy()));
        }
    }

    static SuspectAnswer of(RankSuspects.Ranked answer) {
        ReelSelection selection = answer.reels();
        TracedPopulation found = answer.population();
        SuspectRanking ranking = answer.ranking();
        double level = ranking.question().level();
        String unit = found.units().stream().findFirst().orElse(null);
        Evidence evidence = ranking.question().evidence();
        StrataBy strataBy = ranking.question().strataBy();
        return new SuspectAnswer(
                ranking.testCause() != null,
                ranking.testCause() == null ? null : TestCauseLine.of(ranking.testCause(), evidence),
                ranking.suspects().stream()
                        .map(suspect -> Line.of(suspect, level, unit))
                        .toList(),
                selection.plant(),
                selection.property().id(),
                selection.product(),
                selection.from(),
                selection.to(),
                evidence.word(),
                evidence.method(),
                strataBy.word(),
                strataBy.method(),
                ranking.strata(),
                CORRECTION,
                level,
                ranking.question().minimumExposed(),
                ranking.reels(),
                ranking.failing(),
                new LeftOut(found.notTested(), found.untraced()),
                ranking.exposures(),
                ranking.metByEveryReel(),
                ranking.metByTooFew(),
                ranking.suspectGroups(),
                ranking.tested(),
                NOTE);
    }
}
