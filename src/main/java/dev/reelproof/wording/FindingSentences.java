package dev.reelproof.wording;

import dev.reelproof.judgement.Doubt;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Puts one finding into words. */
final class FindingSentences {
    private final Wording wording;
    private final Catalogue words;
    private final Finding finding;
    private final Requirement requirement;
    private final Optional<PrintedFigure> printed;
    private final List<ObstacleWords> obstacles;

    FindingSentences(Wording wording, Finding finding, Requirement requirement) {
        this.wording = wording;
        this.words = wording.words();
        this.finding = finding;
        this.requirement = requirement;
        this.printed = Optional.ofNullable(finding.figure()).map(figure -> wording.printed(requirement, figure));
        this.obstacles = finding.obstacles().named().stream()
                .map(obstacle -> ObstacleWords.of(obstacle, words))
                .toList();
    }

    FindingWords words() {
        return new FindingWords(
                wording.title(requirement),
                wording.plain(finding.property()),
                wording.outcome(finding.outcome()),
                words.text("outcome." + finding.outcome().word() + ".sign"),
                place(),
                printed.orElse(null),
                sentence(),
                shortfall(),
                obstacles,
                finding.obstacles().more(),
                remark(),
                note(),
                Precautions.of(finding.property(), words).orElse(null),
                leastSure());
    }

    /** Where it is least sure that the requirement is met; null where that is not known. */
    private @Nullable String leastSure() {
        Doubt doubt = finding.doubt();
        if (doubt == null || !isTested()) {
            return null;
        }
        return words.text(
                finding.points() > 1 ? "finding.least-sure" : "finding.sure",
                "place",
                wording.place(finding.property(), doubt),
                "probability",
                wording.probability(doubt.probability()),
                "all",
                wording.range(doubt.atLeast(), 1));
    }

    private String place() {
        return finding.figure() == null
                ? words.text("place.reel")
                : wording.place(finding.property(), finding.figure());
    }

    private @Nullable String remark() {
        return isTested() ? finding.reason() : null;
    }

    private boolean isTested() {
        return finding.outcome() != Outcome.NOT_TESTED;
    }

    private String sentence() {
        if (!isTested() || printed.isEmpty()) {
            return obstacles.isEmpty()
                    ? wording.outcome(finding.outcome())
                    : words.text("finding.not-tested", "why", firstObstacle());
        }
        PrintedFigure figure = printed.get();
        boolean met = !(finding.worst().margin() < 0);
        return words.text(
                met ? "finding.met" : "finding.missed",
                "value",
                quantity(figure.value()),
                "place",
                isOfTheReelAlone() ? null : place(),
                "sense",
                figure.sense(),
                "limit",
                quantity(figure.limit()),
                "margin",
                quantity(figure.distance()),
                "guard",
                guard(met));
    }

    /** Why a value that meets its limit is no plain pass, or one that misses it no plain fail; null where it is plain. */
    private @Nullable String guard(boolean met) {
        boolean plain = finding.outcome() == (met ? Outcome.PASS : Outcome.FAIL);
        if (plain || printed.orElseThrow().probability() == null) {
            return null;
        }
        return words.text(
                met ? "finding.guard.met" : "finding.guard.missed",
                "rule",
                wording.rule(finding.decisionRule()),
                "probability",
                printed.orElseThrow().probability());
    }

    private boolean isOfTheReelAlone() {
        Figure figure = finding.worst();
        return figure.subject().pair() == null && figure.units() == null && figure.megahertz() == null;
    }

    private String quantity(String figure) {
        String unit = printed.orElseThrow().unit();
        return unit.isEmpty() ? figure : figure + " " + unit;
    }

    private @Nullable String shortfall() {
        if (!finding.outcome().rejects() || printed.isEmpty()) {
            return null;
        }
        Figure figure = finding.worst();
        boolean met = !(figure.margin() < 0);
        String side = met ? "guard" : printed.get().upper() ? "over" : "short";
        return words.text(
                "shortfall." + side,
                "title",
                wording.title(requirement),
                "place",
                figure.subject().pair() == null && figure.units() == null
                        ? null
                        : wording.placeWithoutFrequency(finding.property(), figure),
                "margin",
                quantity(printed.get().distance()),
                "frequency",
                figure.megahertz() == null ? null : Figures.frequency(figure.megahertz()));
    }

    private String firstObstacle() {
        int others = obstacles.size() - 1 + finding.obstacles().more();
        return words.text(
                "finding.first-obstacle",
                "obstacle",
                obstacles.get(0).sentence(),
                "more",
                others == 0 ? null : String.valueOf(others));
    }

    private String note() {
        String reason = obstacles.isEmpty() ? finding.reason() : firstObstacle();
        String note = reason == null ? wording.plain(finding.property()) : reason;
        boolean computed = finding.figure() != null
                && finding.figure().derived()
                && requirement.statistic() == Statistic.INDIVIDUAL;
        return computed ? note + " · " + wording.computed() : note;
    }
}
