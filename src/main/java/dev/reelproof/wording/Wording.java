package dev.reelproof.wording;

import dev.reelproof.analysis.Evidence;
import dev.reelproof.analysis.TestCause;
import dev.reelproof.judgement.Doubt;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.judgement.advice.Alternatives;
import dev.reelproof.limit.DecisionRule;
import dev.reelproof.limit.Domain;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.RoundingRule;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Subject;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.concession.Concession;
import dev.reelproof.record.concession.ConcessionStanding;
import dev.reelproof.record.concession.Terms;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Says in one language what the core found out. */
public final class Wording {
    private static final double NEARLY_SURE = 0.999;
    private static final double HARDLY_POSSIBLE = 0.001;
    private static final double PERCENT = 100;
    private static final int DIGITS_OF_READING = 6;

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

    /** What a concession concedes, in a word or two. */
    public String concession(Terms terms) {
        return new ConcessionSentences(words).title(terms);
    }

    /** What will happen when a concession is approved, or has happened. */
    public String concessionEffect(Concession concession) {
        return new ConcessionSentences(words).effect(concession);
    }

    /**
     * What may be done with the reel of an approved concession now.
     *
     * @param bearing what the concession means for the newest test of the reel
     */
    public String concessionAllows(Concession approved, ConcessionStanding bearing) {
        return new ConcessionSentences(words).allows(approved, bearing);
    }

    /** Why a reel neither ships nor has a certificate while a concession is not decided or not done; empty when none is. */
    public Optional<String> unfinished(ConcessionStanding standing) {
        return new ConcessionSentences(words).unfinished(standing);
    }

    /** The same, as a sentence to whoever would ship it. */
    public Optional<String> notToBeShipped(ConcessionStanding standing) {
        return unfinished(standing).map(reason -> words.text("concession.unfinished", "reason", reason));
    }

    /**
     * What an approved concession conceded, as a certificate says it.
     *
     * @param requirements what the test did not meet, or met only conditionally: the trade's names
     */
    public String concession(Concession approved, List<String> requirements) {
        return new ConcessionSentences(words).statement(approved, requirements);
    }

    /** Who asked for an approved concession and who approved it, when and why. */
    public String concessionPersons(Concession approved) {
        return new ConcessionSentences(words).persons(approved);
    }

    /** A role in words. */
    public String role(String word) {
        return words.text("role." + word);
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

    /** Where a figure was found: pair, combination or conductor, end, sample, frequency. */
    public String place(Property property, Figure figure) {
        return places.of(property, figure);
    }

    /** Where it is least sure that a limit is met. */
    String place(Property property, Doubt doubt) {
        return places.of(property, doubt);
    }

    /** Where a figure was found, but for its frequency. */
    String placeWithoutFrequency(Property property, Figure figure) {
        return places.withoutFrequency(property, figure);
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
        String name = limitName(requirement, true);
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

    /** The name of a limit in a drawing; with what distinguishes it where there are several. */
    public String limitName(Requirement requirement, boolean several) {
        return several ? words.text("label.limit") + requirements.qualifiers(requirement) : words.text("label.limit");
    }

    /** Which end of the cable. */
    public String end(End end) {
        return words.text("end." + end.word());
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

    /** A whole limit in words: each figure or formula, with unit and range. */
    public String limit(Requirement requirement) {
        return requirements.limitParts(requirement).stream()
                .map(LimitPart::words)
                .collect(Collectors.joining(words.text("limit.and")));
    }

    /** A whole limit, a part for each stretch of frequency that has a formula of its own. */
    public List<LimitPart> limitParts(Requirement requirement) {
        return requirements.limitParts(requirement);
    }

    /**
     * A label, heading or sentence of a certificate, with its parts filled in.
     *
     * @param parts name and value by turns; a value of null is a part that is not there
     */
    public String paper(PaperWord word, @Nullable String... parts) {
        return words.text(word.key(), parts);
    }

    /** The first and last length mark of a reel, as its jacket has them. */
    public String lengthMarks(double first, double last, String unit) {
        return paper(PaperWord.MARKS, "first", Figures.mark(first), "last", Figures.mark(last), "unit", unit);
    }

    /** The same in another unit than the jacket's, rounded as lengths are. */
    public String convertedMarks(double first, double last, String unit) {
        return paper(PaperWord.MARKS, "first", Figures.length(first), "last", Figures.length(last), "unit", unit);
    }

    /** What a paper is called that a plant declares to be of a kind. */
    public String declared(String kind) {
        return words.text("declared." + kind);
    }

    /** The sentences of a statement of conformity. */
    public StatementSentences statement() {
        return new StatementSentences(this);
    }

    /** How sure a figure is, for who reads the symbol U. */
    public String uncertainty(PrintedFigure figure) {
        return words.text(
                "note.uncertainty",
                "expanded",
                figure.expanded(),
                "unit",
                figure.unit(),
                "probability",
                figure.probability());
    }

    /** What the uncertainties of a judgement are and where they come from; empty when it has none. */
    public Optional<String> uncertainty(Judgement judgement) {
        Judgement.Model model = judgement.uncertaintyModel();
        if (model == null) {
            return Optional.empty();
        }
        return judgement.findings().stream()
                .map(Finding::figure)
                .flatMap(Stream::ofNullable)
                .map(Figure::uncertainty)
                .flatMap(Stream::ofNullable)
                .findFirst()
                .map(uncertainty -> words.text(
                        "uncertainty.in-full",
                        "factor",
                        Figures.step(uncertainty.coverageFactor(), null),
                        "model",
                        model.id(),
                        "revision",
                        String.valueOf(model.revision()),
                        "sha256",
                        model.sha256()))
                .map(sentence -> Stream.of(sentence, record(judgement).conformity())
                        .flatMap(Stream::ofNullable)
                        .collect(Collectors.joining(" ")));
    }

    /** The least sure value of a finding, for a note beside its worst one; empty where all are too sure to be told apart in print. */
    public Optional<String> leastSure(Finding finding) {
        return Optional.ofNullable(finding.doubt())
                .filter(doubt -> finding.points() > 1 && !isNearlySure(doubt.probability()))
                .map(doubt -> words.text(
                        "note.least-sure",
                        "place",
                        place(finding.property(), doubt),
                        "probability",
                        probability(doubt.probability())));
    }

    /** That a value was computed, not measured as such. */
    public String computed() {
        return words.text("note.computed");
    }

    /** By which laws a value was corrected. */
    public String corrected(String laws) {
        return words.text("note.corrected", "laws", laws);
    }

    /** A law that values are corrected by, with its coefficients by name. */
    public String law(LawSpec law) {
        String parts = new TreeMap<>(law.parameters())
                .entrySet().stream()
                        .map(part ->
                                words.text("law-part." + part.getKey(), "value", Figures.step(part.getValue(), null)))
                        .collect(Collectors.joining(", "));
        String name = words.text("law." + law.name());
        return parts.isEmpty() ? name : name + " (" + parts + ")";
    }

    /** Which pairs were left out under an allowance. */
    public String leftOut(List<Integer> pairs) {
        return words.text("note.left-out", "pairs", pairs(pairs));
    }

    /** Pairs by their numbers. */
    String pairs(List<Integer> pairs) {
        String numbers = pairs.stream().map(String::valueOf).collect(Collectors.joining(", "));
        return pairs.size() == 1
                ? words.text("place.pair", "pair", numbers)
                : words.text("place.pairs", "pairs", numbers);
    }

    /** What was measured, before it was referred to temperature and length. */
    public String asMeasured(double value, String unit) {
        return words.text("note.measured", "value", Figures.significant(value, DIGITS_OF_READING), "unit", unit);
    }

    /** What the value was before the rule rounded it. */
    public String beforeRounding(String value) {
        return words.text("note.unrounded", "value", value);
    }

    /** A probability in percent with one place; never said to be certain. */
    public String probability(double probability) {
        if (!(probability <= NEARLY_SURE)) {
            return words.text("probability.above", "percent", Figures.fixed(PERCENT * NEARLY_SURE, 1));
        }
        return probability < HARDLY_POSSIBLE
                ? words.text("probability.below", "percent", Figures.fixed(PERCENT * HARDLY_POSSIBLE, 1))
                : words.text("probability", "percent", Figures.fixed(PERCENT * probability, 1));
    }

    /** Whether a probability is too near 1 to be told from it in print. */
    boolean isNearlySure(double probability) {
        return !(probability <= NEARLY_SURE);
    }

    /** What is known of a probability between two bounds; null where that is nothing. */
    @Nullable
    String range(double atLeast, double atMost) {
        if (!(atLeast <= NEARLY_SURE)) {
            return words.text("probability.of-above", "percent", Figures.fixed(PERCENT * NEARLY_SURE, 1));
        }
        String least = Figures.fixed(PERCENT * atLeast, 1);
        String most = Figures.fixed(PERCENT * atMost, 1);
        boolean below = atLeast >= HARDLY_POSSIBLE;
        if (atMost <= NEARLY_SURE) {
            return below
                    ? words.text("probability.between", "least", least, "most", most)
                    : words.text("probability.at-most", "percent", most);
        }
        return below ? words.text("probability.at-least", "percent", least) : null;
    }

    /** What a requirement came to. */
    public String outcome(Outcome outcome) {
        return words.text("outcome." + outcome.word());
    }

    /** What a reel came to. */
    public String verdict(Verdict verdict, boolean conditional) {
        return words.text("verdict." + Look.of(verdict, conditional).word());
    }

    /** What is said of a certificate's life. */
    public CertificateWords certificates() {
        return new CertificateWords(words);
    }

    /** That a reel which passed must not go, being on hold. */
    public String heldThoughAccepted() {
        return words.text("verdict.held.sentence");
    }

    /** A decision rule in few words. */
    public String rule(DecisionRule rule) {
        return requirements.rule(rule);
    }

    /**
     * A decision rule in sentences.
     *
     * @param rounded whether values that it decides on were rounded before
     */
    public String ruleInFull(DecisionRule rule, boolean rounded) {
        return requirements.ruleInFull(rule, rounded);
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
        return new VerdictSentences(this).of(judgement);
    }

    /** A test of a reel among its tests as a person reads it. */
    public AttemptWords attempt(AttemptHistory history, UUID record, boolean awaitsEngineer) {
        return AttemptWords.of(history, record, awaitsEngineer, words);
    }

    /** That the test itself may be what failing reels have in common, and what to do about it. */
    public String testCause(TestCause cause, Evidence evidence) {
        return new TestCauseSentences(words).of(cause, evidence);
    }

    /**
     * What else a reel could be.
     *
     * @param pairs how many pairs the product has
     */
    public AlternativesWords alternatives(Alternatives alternatives, int pairs) {
        return new AlternativesWords(this, alternatives, pairs);
    }
}
