package dev.reelproof.judgement.advice;

import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judge;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.judgement.Verdict;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.quantity.Length;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * What else a reel could be: a shorter one, or one of another limit set of its construction. Advice for whoever has the authority; it
 * changes nothing.
 *
 * @param verdict the verdict under the reel's own set
 * @param own that set, in the revision that judged
 * @param cutTo the greatest length at which all requirements that the length changes would pass; empty when nothing fails or when
 *     cutting does not mend all that fails
 * @param unmet the requirements of the reel's own set that do not pass, in the set's order
 * @param grades the other limit sets, in the order asked
 */
public record Alternatives(
        Verdict verdict, LimitSet own, Optional<Length> cutTo, List<Unmet> unmet, List<Grade> grades) {

    /**
     * A requirement of the reel's own set that does not pass.
     *
     * @param finding what was found
     * @param effect what cutting does to its value
     */
    public record Unmet(Finding finding, CuttingEffect effect) {
        public boolean fails() {
            return finding.outcome().rejects();
        }

        /** Whether it fails on a value that goes with the length of the reel. */
        public boolean cuttingChangesIt() {
            return fails() && effect == CuttingEffect.CHANGES_WITH_THE_LENGTH;
        }
    }

    /**
     * What the result comes to under another limit set.
     *
     * @param limitSet the set
     * @param verdict the verdict; incomplete where the set could not be judged at all
     * @param inTheWay the findings that are not passes
     * @param notJudged why the set could not be judged at all; empty where it was
     */
    public record Grade(LimitSet limitSet, Verdict verdict, List<Finding> inTheWay, Optional<String> notJudged) {
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
        unmet = List.copyOf(unmet);
        grades = List.copyOf(grades);
    }

    /** The requirements of the reel's own set that fail. */
    public List<Unmet> failing() {
        return unmet.stream().filter(Unmet::fails).toList();
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
        return unmet.stream()
                .filter(one -> one.fails() == failing)
                .map(one -> one.finding().property())
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
        List<Unmet> unmet = own.findings().stream()
                .filter(finding -> !finding.outcome().accepts())
                .map(finding -> new Unmet(finding, CutBack.effect(requirement(finding, ownSet, product))))
                .toList();
        List<Unmet> failing = unmet.stream().filter(Unmet::fails).toList();
        Optional<Length> cutTo = !failing.isEmpty() && failing.stream().allMatch(Unmet::cuttingChangesIt)
                ? new CutBack(measured.apply(ownSet), product, ownSet, uncertaintyModel, own.findings())
                        .greatestLength()
                : Optional.empty();
        List<Grade> grades = others.stream()
                .filter(set -> set.pairs().holds(product.pairs()))
                .map(set -> grade(measured.apply(set), product, set, uncertaintyModel, engine))
                .toList();
        return new Alternatives(own.verdict(), ownSet, cutTo, unmet, grades);
    }

    private static Requirement requirement(Finding finding, LimitSet set, Product product) {
        return set.requirement(finding.requirement(), product.pairs())
                .orElseThrow(() -> new IllegalArgumentException(
                        "limit set " + set.id() + " has no requirement " + finding.requirement()));
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
            return new Grade(set, Verdict.INCOMPLETE, List.of(), Optional.of(String.valueOf(e.getMessage())));
        }
        List<Finding> inTheWay = judgement.findings().stream()
                .filter(finding -> !finding.outcome().accepts())
                .toList();
        return new Grade(set, judgement.verdict(), inTheWay, Optional.empty());
    }
}
