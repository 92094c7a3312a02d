package dev.reelproof.wording;

import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.judgement.advice.Alternatives;
import dev.reelproof.judgement.advice.CuttingEffect;
import dev.reelproof.limit.LimitSet;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Puts what else a reel could be into words: in a text that names requirements by their ids, for who reads limit sets, and in lines
 * that name them by the trade's names, for a page.
 */
public final class AlternativesWords {
    private final Wording wording;
    private final Catalogue words;
    private final Alternatives alternatives;
    private final int pairs;

    /** @param pairs how many pairs the product has */
    AlternativesWords(Wording wording, Alternatives alternatives, int pairs) {
        this.wording = wording;
        this.words = wording.words();
        this.alternatives = alternatives;
        this.pairs = pairs;
    }

    /** Why cutting mends a requirement or does not; of one that was not tested, why it was not. */
    public String why(Alternatives.Unmet unmet) {
        return unmet.fails()
                ? words.text("sentence", "text", reason(unmet))
                : words.text(
                        "alternatives.was-not-tested",
                        "requirement",
                        unmet.finding().requirement(),
                        "why",
                        unmet.finding().reason());
    }

    private String reason(Alternatives.Unmet unmet) {
        return unmet.finding().requirement() + " " + effect(unmet.effect());
    }

    private String effect(CuttingEffect effect) {
        return words.text("cutting." + effect.id());
    }

    /** Why the result passes another limit set or does not. */
    public String why(Alternatives.Grade grade) {
        if (grade.notJudged().isPresent()) {
            return words.text("grade.not-judged", "why", grade.notJudged().get());
        }
        if (grade.passes()) {
            return words.text("grade.passes");
        }
        if (grade.inTheWay().isEmpty()) {
            return words.text("grade.of-nothing");
        }
        return words.text(
                grade.onlyObstacle().isPresent() ? "grade.one-in-the-way" : "grade.in-the-way",
                "requirements",
                grade.inTheWay().stream()
                        .map(finding -> words.text(
                                finding.outcome().rejects() ? "grade.fails" : "grade.not-tested",
                                "requirement",
                                finding.requirement()))
                        .collect(Collectors.joining(", ")));
    }

    /** All of it in one text. */
    public String advice() {
        Stream<String> first =
                switch (alternatives.verdict()) {
                    case ACCEPTED -> Stream.of(text("advice.accepted", "set", ownId()));
                    case INCOMPLETE -> Stream.of(text("advice.incomplete", "set", ownId()));
                    case REJECTED -> Stream.concat(Stream.of(cutting()), notTested());
                };
        Stream<String> rest = Stream.of(passed(), singles(), Stream.of(words.text("advice.authority")))
                .flatMap(sentences -> sentences);
        return Stream.concat(first, rest).collect(Collectors.joining(" "));
    }

    private String ownId() {
        return alternatives.own().id();
    }

    private String text(String key, String part, String value) {
        return words.text(key, part, value);
    }

    private String cutting() {
        if (alternatives.cutTo().isPresent()) {
            return words.text("advice.cut", "length", cutLength(), "requirements", ids(alternatives.failing(), ", "));
        }
        List<Alternatives.Unmet> beyond = beyondCutting();
        return beyond.isEmpty()
                ? words.text("advice.no-length")
                : text(
                        "advice.cutting-is-no-use",
                        "why",
                        beyond.stream().map(this::reason).collect(Collectors.joining("; ")));
    }

    private String cutLength() {
        return Figures.cutLength(alternatives.cutTo().orElseThrow().metres());
    }

    private List<Alternatives.Unmet> beyondCutting() {
        return alternatives.failing().stream()
                .filter(unmet -> !unmet.cuttingChangesIt())
                .toList();
    }

    private Stream<String> notTested() {
        List<Alternatives.Unmet> open =
                alternatives.unmet().stream().filter(unmet -> !unmet.fails()).toList();
        return open.isEmpty() ? Stream.empty() : Stream.of(text("advice.not-tested", "requirements", ids(open, ", ")));
    }

    private static String ids(List<Alternatives.Unmet> unmet, String joint) {
        return unmet.stream().map(one -> one.finding().requirement()).collect(Collectors.joining(joint));
    }

    private Stream<String> passed() {
        List<String> passed = alternatives.passes();
        if (!passed.isEmpty()) {
            return Stream.of(text("advice.passes", "sets", String.join(words.text("advice.and"), passed)));
        }
        return alternatives.verdict() == Verdict.ACCEPTED
                ? Stream.empty()
                : Stream.of(words.text("advice.passes-no-other"));
    }

    private Stream<String> singles() {
        return alternatives.grades().stream()
                .flatMap(grade -> grade
                        .onlyObstacle()
                        .map(finding -> words.text(
                                "advice.one-in-the-way",
                                "set",
                                grade.limitSet().id(),
                                "requirement",
                                finding.requirement()))
                        .stream());
    }

    /** All of it, a line each, for a page. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>(shorter());
        alternatives.grades().stream().map(this::line).forEach(lines::add);
        if (alternatives.grades().isEmpty()) {
            lines.add(words.text("alternatives.none"));
        }
        return lines;
    }

    private List<String> shorter() {
        if (alternatives.cutTo().isPresent()) {
            return List.of(text("alternatives.shorter", "length", cutLength()));
        }
        List<String> beyond = beyondCutting().stream()
                .map(unmet -> words.text(
                        "alternatives.cutting-is-no-use",
                        "title",
                        title(unmet.finding(), alternatives.own()),
                        "why",
                        effect(unmet.effect())))
                .toList();
        return beyond.isEmpty() ? List.of(words.text("alternatives.no-length")) : beyond;
    }

    private String title(Finding finding, LimitSet limitSet) {
        return wording.title(limitSet.requirement(finding.requirement(), pairs).orElseThrow());
    }

    private String line(Alternatives.Grade grade) {
        return words.text(
                key(grade),
                "title",
                grade.limitSet().title(),
                "limitSet",
                grade.limitSet().id(),
                "requirement",
                grade.onlyObstacle()
                        .map(finding -> title(finding, grade.limitSet()))
                        .orElse(null),
                "count",
                String.valueOf(grade.inTheWay().size()));
    }

    private static String key(Alternatives.Grade grade) {
        if (grade.passes()) {
            return "alternatives.passes";
        }
        if (grade.onlyObstacle().isPresent()) {
            return "alternatives.one-in-the-way";
        }
        return grade.inTheWay().isEmpty() ? "alternatives.cannot-be-judged" : "alternatives.several-in-the-way";
    }
}
