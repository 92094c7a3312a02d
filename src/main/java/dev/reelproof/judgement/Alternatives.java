package dev.reelproof.judgement;

import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.quantity.Length;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What else a reel could be: a shorter one, or one of another limit set of its construction. Advice for whoever has the authority; it
 * changes nothing.
 *
 * @param cutTo the greatest length at which all requirements that the length changes would pass; empty when nothing fails or when
 *     cutting does not mend all that fails
 * @param obstacles the requirements of the reel's own set that do not pass, in the set's order
 * @param grades the other limit sets, in the order asked
 * @param advice all of it in sentences
 */
public record Alternatives(Optional<Length> cutTo, List<Obstacle> obstacles, List<Grade> grades, String advice) {
    private static final String AUTHORITY =
            "This is advice for whoever has the authority: nothing has been decided, cut or changed by it.";

    /**
     * A requirement that stands in the way.
     *
     * @param finding what was found
     * @param cuttingChangesIt whether its value goes with the length of the reel
     * @param why in a sentence, why cutting mends it or does not; of one not tested, why it was not
     */
    public record Obstacle(Finding finding, boolean cuttingChangesIt, String why) {
        public boolean fails() {
            return finding.outcome().rejects();
        }
    }

    /**
     * What the result comes to under another limit set.
     *
     * @param limitSet the set
     * @param verdict the verdict; incomplete where the set could not be judged at all
     * @param inTheWay the findings that are not passes
     * @param why in a sentence
     */
    public record Grade(LimitSet limitSet, Verdict verdict, List<Finding> inTheWay, String why) {
        public Grade {
            inTheWay = List.copyOf(inTheWay);
        }

        public boolean passes() {
            return verdict == Verdict.ACCEPTED;
        }

        /** The one requirement that alone keeps the reel from passing; empty when there is none or more than one. */
        public Optional<Finding> onlyObstacle() {
            return inTheWay.size() == 1 ? Optional.of(inTheWay.get(0)) : Optional.empty();
        }
    }

    public Alternatives {
        obstacles = List.copyOf(obstacles);
        grades = List.copyOf(grades);
    }

    /** The limit sets that the reel passes as measured, its own not among them. */
    public List<String> passes() {
        return grades.stream()
                .filter(Grade::passes)
                .map(grade -> grade.limitSet().id())
                .toList();
    }

    /** The properties that fail under the reel's own set. */
    public List<Property> blockedBy() {
        return properties(true);
    }

    /** The properties that are not tested under the reel's own set. */
    public List<Property> notTested() {
        return properties(false);
    }

    private List<Property> properties(boolean failing) {
        return obstacles.stream()
                .filter(obstacle -> obstacle.fails() == failing)
                .map(obstacle -> obstacle.finding().property())
                .distinct()
                .toList();
    }

    /**
     * What a tested reel could be.
     *
     * @param measured what was measured; a limit set has a say where network-analyser data are evaluated by its terms
     * @param product what the reel is meant to be
     * @param own the judgement under its own set
     * @param ownSet that set, in the revision that judged
     * @param others the other sets of the construction; one that is not for the product's pair count is left out
     * @param uncertaintyModel that of the day; empty for none
     * @param engine version of the program
     */
    public static Alternatives of(
            Function<LimitSet, ReelResult> measured,
            Product product,
            Judgement own,
            LimitSet ownSet,
            List<LimitSet> others,
            Optional<UncertaintyModel> uncertaintyModel,
            String engine) {
        List<Obstacle> obstacles = own.findings().stream()
                .filter(finding -> !finding.outcome().accepts())
                .map(finding -> obstacle(finding, ownSet, product))
                .toList();
        List<Obstacle> failing = obstacles.stream().filter(Obstacle::fails).toList();
        Optional<Length> cutTo = !failing.isEmpty() && failing.stream().allMatch(Obstacle::cuttingChangesIt)
                ? new CutBack(measured.apply(ownSet), product, ownSet, uncertaintyModel, own.findings())
                        .greatestLength()
                : Optional.empty();
        List<Grade> grades = others.stream()
                .filter(set -> set.pairs().holds(product.pairs()))
                .map(set -> grade(measured.apply(set), product, set, uncertaintyModel, engine))
                .toList();
        return new Alternatives(cutTo, obstacles, grades, advice(own.verdict(), ownSet, cutTo, obstacles, grades));
    }

    private static Obstacle obstacle(Finding finding, LimitSet set, Product product) {
        Requirement requirement = set.requirement(finding.requirement(), product.pairs())
                .orElseThrow(() -> new IllegalArgumentException(
                        "limit set " + set.id() + " has no requirement " + finding.requirement()));
        if (!finding.outcome().rejects()) {
            return new Obstacle(finding, false, finding.requirement() + " was not tested: " + finding.reason() + ".");
        }
        return new Obstacle(
                finding, CutBack.changes(requirement), finding.requirement() + " " + CutBack.why(requirement) + ".");
    }

    private static Grade grade(
            ReelResult result,
            Product product,
            LimitSet set,
            Optional<UncertaintyModel> uncertaintyModel,
            String engine) {
        Judgement judgement;
        try {
            judgement = Judge.judge(result, product, set, uncertaintyModel, engine);
        } catch (OutsideLawException e) {
            return new Grade(set, Verdict.INCOMPLETE, List.of(), "It cannot be judged: " + e.getMessage() + ".");
        }
        List<Finding> inTheWay = judgement.findings().stream()
                .filter(finding -> !finding.outcome().accepts())
                .toList();
        return new Grade(set, judgement.verdict(), inTheWay, why(judgement, inTheWay));
    }

    private static String why(Judgement judgement, List<Finding> inTheWay) {
        if (judgement.verdict() == Verdict.ACCEPTED) {
            return "Every requirement passes as measured.";
        }
        if (inTheWay.isEmpty()) {
            return "No requirement of the set holds for this product.";
        }
        String single = inTheWay.size() == 1 ? "A single requirement stands in the way: " : "In the way stand: ";
        return single
                + inTheWay.stream()
                        .map(finding ->
                                finding.requirement() + (finding.outcome().rejects() ? " (fails)" : " (not tested)"))
                        .collect(Collectors.joining(", "))
                + ".";
    }

    private static String advice(
            Verdict verdict, LimitSet ownSet, Optional<Length> cutTo, List<Obstacle> obstacles, List<Grade> grades) {
        List<String> sentences = new ArrayList<>();
        List<Obstacle> failing = obstacles.stream().filter(Obstacle::fails).toList();
        switch (verdict) {
            case ACCEPTED -> sentences.add("The reel is accepted by " + ownSet.id() + ".");
            case INCOMPLETE -> sentences.add("Nothing fails under " + ownSet.id()
                    + ", but not everything was tested: complete the measurement first.");
            case REJECTED -> {
                sentences.add(cutting(cutTo, failing));
                if (failing.size() < obstacles.size()) {
                    sentences.add("Not tested, whatever is done: "
                            + obstacles.stream()
                                    .filter(obstacle -> !obstacle.fails())
                                    .map(obstacle -> obstacle.finding().requirement())
                                    .collect(Collectors.joining(", "))
                            + ".");
                }
            }
        }
        String passed = grades.stream()
                .filter(Grade::passes)
                .map(grade -> grade.limitSet().id())
                .collect(Collectors.joining(" and "));
        if (!passed.isEmpty()) {
            sentences.add("As measured it passes " + passed + ".");
        } else if (verdict != Verdict.ACCEPTED) {
            sentences.add("As measured it passes no other limit set of its construction.");
        }
        grades.forEach(grade -> grade.onlyObstacle()
                .ifPresent(finding -> sentences.add("Of "
                        + grade.limitSet().id() + " a single requirement stands in the way: " + finding.requirement()
                        + ".")));
        sentences.add(AUTHORITY);
        return String.join(" ", sentences);
    }

    private static String cutting(Optional<Length> cutTo, List<Obstacle> failing) {
        if (cutTo.isPresent()) {
            return "Cut to " + cutTo.get().metres() + " m or less, a piece would be expected to pass "
                    + failing.stream()
                            .map(obstacle -> obstacle.finding().requirement())
                            .collect(Collectors.joining(", "))
                    + ", were the cable uniform; the piece is a new reel and must be tested.";
        }
        List<Obstacle> beyond = failing.stream()
                .filter(obstacle -> !obstacle.cuttingChangesIt())
                .toList();
        return beyond.isEmpty()
                ? "No length was found at which all that fails would pass."
                : "Cutting does not mend it: "
                        + beyond.stream()
                                .map(obstacle -> obstacle.why().replaceAll("\\.$", ""))
                                .collect(Collectors.joining("; "))
                        + ".";
    }
}
