package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.correction.CorrectionLaw;
import dev.reelproof.correction.Laws;
import dev.reelproof.limit.LawSpec;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.file.LimitSetReader;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every figure explains itself: each requirement of each shipped limit set is judged, and its chain walked from upload to margin. */
class ExplanationTest {
    /** Cores up to this size are judged as they are stated; the larger ones differ by their limits alone. */
    private static final int LARGEST_CORE = 26;

    private static List<LimitSet> shipped() throws IOException {
        LimitSetReader reader = new LimitSetReader(Laws::named);
        List<LimitSet> sets = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of("limits"))) {
            for (Path file : files.filter(one -> one.toString().endsWith(".yaml"))
                    .sorted()
                    .toList()) {
                sets.add(reader.read(file.toString(), Files.readString(file)));
            }
        }
        assertFalse(sets.isEmpty());
        return sets;
    }

    /** The smallest core of each requirement that is for some pair counts only, and one that has three units. */
    private static Set<Integer> cores(LimitSet set) {
        Set<Integer> cores = new TreeSet<>();
        cores.add(set.pairs().from());
        cores.add(Math.min(set.pairs().to(), LARGEST_CORE));
        set.requirements().forEach(requirement -> requirement.pairs().ifPresent(pairs -> cores.add(pairs.from())));
        cores.removeIf(pairs -> pairs > LARGEST_CORE);
        return cores;
    }

    @TestFactory
    List<DynamicTest> everyRequirementOfEveryShippedSetIsExplained() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (LimitSet set : shipped()) {
            for (int pairs : cores(set)) {
                tests.add(DynamicTest.dynamicTest(
                        set.id() + " revision " + set.revision() + ", " + pairs + " pairs", () -> walk(set, pairs)));
            }
        }
        return tests;
    }

    private static void walk(LimitSet set, int pairs) {
        CompleteResult complete = new CompleteResult(set, pairs);
        Judgement judgement = Judge.judge(complete.result(), complete.product(), set, Optional.empty(), "test");
        Set<String> explained = new HashSet<>();
        for (Finding finding : judgement.findings()) {
            Requirement requirement = set.requirements().stream()
                    .filter(one -> one.id().equals(finding.requirement()))
                    .filter(one -> one.pairs().isEmpty() || one.pairs().get().holds(pairs))
                    .findFirst()
                    .orElseThrow();
            assertTrue(finding.outcome().accepts(), () -> finding.requirement() + ": " + finding.reason());
            check(finding, requirement);
            explained.add(finding.requirement());
        }
        long holding = set.requirements().stream()
                .filter(one -> one.pairs().isEmpty() || one.pairs().get().holds(pairs))
                .filter(one -> new CoreLayout(complete.product()).meets(one))
                .count();
        assertEquals(holding, explained.size());
    }

    private static void check(Finding finding, Requirement requirement) {
        List<Step> steps = finding.figure().steps();
        String what = finding.requirement() + " " + steps;
        assertEquals("measured", steps.get(0).title(), what);
        assertTrue(
                of(steps, "measured").stream().allMatch(step -> step.detail().matches("/(readings|sweeps)/\\d+.*: .*")),
                what);
        for (LawSpec spec : requirement.laws()) {
            CorrectionLaw law = Laws.named(spec.name(), spec.parameters());
            List<Step> applied = of(steps, "corrected").stream()
                    .filter(step -> step.detail().startsWith(law.name() + ": " + law.formula()))
                    .toList();
            assertEquals(of(steps, "measured").size(), applied.size(), "each part by " + law.name() + ": " + what);
            for (Step step : applied) {
                assertEquals(law.citation(), step.source(), what);
                spec.parameters()
                        .forEach((name, coefficient) -> assertTrue(
                                step.detail()
                                        .contains(BigDecimal.valueOf(coefficient)
                                                .stripTrailingZeros()
                                                .toPlainString()),
                                name + " in " + what));
            }
        }
        boolean ofParts = !requirement.property().parts().isEmpty();
        assertEquals(ofParts, !of(steps, "derived").isEmpty(), what);
        of(steps, "derived").forEach(step -> assertFalse(step.source().isBlank(), what));
        assertEquals(
                requirement.statistic() != Statistic.INDIVIDUAL,
                of(steps, "statistic").size() == 1,
                what);
        of(steps, "statistic").forEach(step -> assertFalse(step.source().isBlank(), what));
        assertEquals(1, of(steps, "covered").size(), what);
        assertEquals(finding.points(), of(steps, "covered").get(0).value(), 0, what);
        Step limit = of(steps, "limit").get(0);
        assertEquals(requirement.source().words(), limit.source(), what);
        assertTrue(limit.detail().startsWith(requirement.limit().sense() + " "), what);
        assertEquals(finding.figure().limit(), limit.value(), 0, what);
        assertEquals(finding.figure().margin(), of(steps, "margin").get(0).value(), 0, what);
        Step last = steps.stream()
                .filter(step -> Set.of("measured", "converted", "derived", "corrected", "statistic")
                        .contains(step.title()))
                .reduce((one, next) -> next)
                .orElseThrow();
        assertEquals(finding.figure().value(), last.value(), 0, "the chain leads to the figure: " + what);
    }

    private static List<Step> of(List<Step> steps, String title) {
        return steps.stream().filter(step -> step.title().equals(title)).toList();
    }
}
