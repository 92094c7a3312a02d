package dev.reelproof.wording;

import dev.reelproof.judgement.Alternatives;
import dev.reelproof.judgement.Finding;
import dev.reelproof.limit.LimitSet;
import java.util.ArrayList;
import java.util.List;

/** Puts what else a reel could be into lines. */
final class AdviceLines {
    private final Wording wording;
    private final Catalogue words;
    private final int pairs;

    AdviceLines(Wording wording, int pairs) {
        this.wording = wording;
        this.words = wording.words();
        this.pairs = pairs;
    }

    List<String> of(Alternatives alternatives, LimitSet own) {
        List<String> lines = new ArrayList<>(shorter(alternatives, own));
        alternatives.grades().stream().map(this::grade).forEach(lines::add);
        if (alternatives.grades().isEmpty()) {
            lines.add(words.text("alternatives.none"));
        }
        return lines;
    }

    private List<String> shorter(Alternatives alternatives, LimitSet own) {
        if (alternatives.cutTo().isPresent()) {
            double metres = alternatives.cutTo().get().metres();
            return List.of(words.text("alternatives.shorter", "length", Figures.cutLength(metres)));
        }
        List<String> beyond = alternatives.obstacles().stream()
                .filter(obstacle -> obstacle.fails() && !obstacle.cuttingChangesIt())
                .map(obstacle -> words.text(
                        "alternatives.cutting-is-no-use",
                        "title",
                        title(obstacle.finding(), own),
                        "why",
                        obstacle.why()
                                .substring(obstacle.finding().requirement().length() + 1)))
                .toList();
        return beyond.isEmpty() ? List.of(words.text("alternatives.no-length")) : beyond;
    }

    private String title(Finding finding, LimitSet limitSet) {
        return wording.title(limitSet.requirement(finding.requirement(), pairs).orElseThrow());
    }

    private String grade(Alternatives.Grade grade) {
        String key;
        if (grade.passes()) {
            key = "alternatives.passes";
        } else if (grade.onlyObstacle().isPresent()) {
            key = "alternatives.one-in-the-way";
        } else {
            key = grade.inTheWay().isEmpty() ? "alternatives.cannot-be-judged" : "alternatives.several-in-the-way";
        }
        return words.text(
                key,
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
}
