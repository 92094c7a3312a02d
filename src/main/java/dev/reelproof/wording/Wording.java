package dev.reelproof.wording;

import dev.reelproof.judgement.Alternatives;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import java.util.List;
import java.util.Locale;

/** Says in one language what the core found out. */
public final class Wording {
    private static final double NEARLY_SURE = 0.999;
    private static final double PERCENT = 100;

    private final Catalogue words;
    private final Places places;
    private final RequirementWords requirements;

    private Wording(Catalogue words) {
        this.words = words;
        this.places = new Places(words);
        this.requirements = new RequirementWords(words);
    }

    /** What is said with the words of a catalogue. */
    public static Wording of(Catalogue words) {
        return new Wording(words);
    }

    /** What is said in English. */
    public static Wording english() {
        return of(Catalogue.of(Locale.ENGLISH));
    }

    Catalogue words() {
        return words;
    }

    /** The trade's name of a property. */
    public String title(Property property) {
        return requirements.title(property);
    }

    /** The property in plain words. */
    public String plain(Property property) {
        return requirements.plain(property);
    }

    /** The property with what is limited of it: statistic, combinations, units, frequency. */
    public String title(Requirement requirement) {
        return requirements.title(requirement);
    }

    /** Where along frequency a limit holds; empty where frequency plays no part. */
    public String domain(Domain domain) {
        return requirements.domain(domain);
    }

    /** Where a figure was found: pair, combination or conductor, end, sample, frequency. */
    public String place(Property property, Figure figure) {
        return places.of(property, figure);
    }

    /** A pair, combination or conductor with its end and sample; "reel" where there is none. */
    public String place(Property property, Subject subject) {
        return places.of(property, subject);
    }

    /** The name of a line in a drawing where room is short: {@code 1}, {@code 1-2}, {@code 1 from 2}; empty for the reel. */
    public String shortLabel(Property property, Subject subject) {
        return places.shortLabel(property, subject);
    }

    /** The name of a line in a key: {@code pair 1, far end}, {@code 1-2}, {@code 1 from 2, far end}; "reel" for the reel. */
    public String label(Property property, Subject subject) {
        return places.label(property, subject);
    }

    /** The name of a limit in a key: what distinguishes it from other limits on the property; at one frequency with its figure. */
    public String label(Requirement requirement) {
        String name = words.text("label.limit") + requirements.qualifiers(requirement);
        if (!(requirement.domain() instanceof Domain.Spot spot)) {
            return name;
        }
        double value = requirement
                .limit()
                .upper()
                .or(requirement.limit()::lower)
                .orElseThrow()
                .at(spot.megahertz());
        return name + ": " + Figures.step(value, requirement.unit().text());
    }

    /** What runs along the axis of a plot over frequency. */
    public String frequencyAxis() {
        return words.text("axis.frequency");
    }

    /** Which side of a limit is the good one. */
    String sense(boolean upper) {
        return words.text(upper ? "sense.at-most" : "sense.at-least");
    }

    /** A figure as it is printed against its limit. */
    public PrintedFigure printed(Requirement requirement, Figure figure) {
        return PrintedFigure.of(requirement, figure, this);
    }

    /** A probability in percent with one place; never said to be certain. */
    public String probability(double probability) {
        if (!(probability <= NEARLY_SURE)) {
            return words.text("probability.above", "percent", Figures.fixed(PERCENT * NEARLY_SURE, 1));
        }
        return probability < 1 - NEARLY_SURE
                ? words.text("probability.below", "percent", Figures.fixed(PERCENT * (1 - NEARLY_SURE), 1))
                : words.text("probability", "percent", Figures.fixed(PERCENT * probability, 1));
    }

    /** What a requirement came to. */
    public String outcome(Outcome outcome) {
        return words.text("outcome." + outcome.word());
    }

    /** What a reel came to. */
    public String verdict(Verdict verdict, boolean conditional) {
        return words.text("verdict." + Look.of(verdict, conditional).word());
    }

    /** That a reel which passed must not go, being on hold. */
    public String heldThoughAccepted() {
        return words.text("verdict.held.sentence");
    }

    /** A decision rule in few words. */
    public String rule(DecisionRule rule) {
        return requirements.rule(rule);
    }

    /** A decision rule in sentences. */
    public String ruleInFull(DecisionRule rule) {
        return requirements.ruleInFull(rule);
    }

    /** How values are brought to the precision of their limits. */
    public String rounding(RoundingRule rule) {
        return words.text("rounding." + rule.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    /** A finding as a person reads it. */
    public FindingWords finding(Finding finding, Requirement requirement) {
        return new FindingSentences(this, finding, requirement).words();
    }

    /** A judgement as a person reads it. */
    public RecordWords record(Judgement judgement) {
        return new VerdictSentences(words).of(judgement);
    }

    /**
     * What else a reel could be, a line each.
     *
     * @param own the reel's own limit set
     * @param pairs how many pairs the product has
     */
    public List<String> alternatives(Alternatives alternatives, LimitSet own, int pairs) {
        return new AdviceLines(this, pairs).of(alternatives, own);
    }
}
