package dev.reelproof.wording;

import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Outcome;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.Product;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Makes the statement of conformity of an accepted reel: what it meets, instead of how many pairs, on what conditions, how surely. */
public final class StatementSentences {
    private final Wording wording;
    private final Catalogue words;

    StatementSentences(Wording wording) {
        this.wording = wording;
        this.words = wording.words();
    }

    /** That the reel meets the requirements of the set, or how many it does not meet, and for which pairs where some were left out. */
    public List<String> conformity(String reel, Judgement judgement, LimitSet limitSet, Product product) {
        int count = judgement.findings().size();
        boolean isMet = judgement.verdict() == Verdict.ACCEPTED;
        long missed = judgement.findings().stream()
                .filter(finding ->
                        Outcome.rejectingWords().contains(finding.outcome().word()))
                .count();
        List<String> sentences = new ArrayList<>();
        sentences.add(words.text(
                !isMet ? "statement.misses" : count == 1 ? "statement.meets-one" : "statement.meets",
                "reel",
                reel,
                "missed",
                String.valueOf(missed),
                "count",
                String.valueOf(count),
                "set",
                limitSet.title(),
                "revision",
                String.valueOf(limitSet.revision())));
        sentences.addAll(leftOut(judgement, limitSet, product));
        List<Finding> conditional = judgement.findings().stream()
                .filter(finding -> finding.outcome() == Outcome.CONDITIONAL_PASS)
                .toList();
        if (!conditional.isEmpty()) {
            sentences.add(words.text("statement.conditional", "requirements", titles(conditional, limitSet, product)));
        }
        String conformity = wording.record(judgement).conformity();
        if (conformity != null) {
            sentences.add(conformity);
        }
        return sentences;
    }

    /** One sentence for each choice of pairs that was left out. */
    private List<String> leftOut(Judgement judgement, LimitSet limitSet, Product product) {
        Map<List<Integer>, List<Finding>> byPairs = judgement.findings().stream()
                .filter(finding -> !finding.varyingPairs().isEmpty())
                .collect(Collectors.groupingBy(Finding::varyingPairs, LinkedHashMap::new, Collectors.toList()));
        return byPairs.entrySet().stream()
                .map(one -> words.text(
                        "statement.left-out",
                        "pairs",
                        String.valueOf(product.pairs()),
                        "met",
                        String.valueOf(product.pairs() - one.getKey().size()),
                        "requirements",
                        titles(one.getValue(), limitSet, product),
                        "left",
                        wording.pairs(one.getKey())))
                .toList();
    }

    private String titles(List<Finding> findings, LimitSet limitSet, Product product) {
        return findings.stream()
                .map(finding -> wording.title(limitSet.requirement(finding.requirement(), product.pairs())
                        .orElseThrow()))
                .collect(Collectors.joining("; "));
    }

    /**
     * What the tests of the reel came to.
     *
     * @param tests the same in few words
     */
    public String tests(String tests) {
        return words.text("statement.tests", "tests", tests);
    }

    /**
     * That this issue takes the place of another.
     *
     * @param day when that was issued
     */
    public String replaces(int issue, String day, String reason) {
        return words.text("statement.replaces", "issue", String.valueOf(issue), "day", day, "reason", reason);
    }

    /** That the reel is what an order asks for, as far as it asks for the limits that were judged. */
    public String order(String order) {
        return words.text("statement.order", "order", order);
    }
}
