package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.correction.Laws;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.limit.file.LimitSetReader;
import dev.reelproof.limit.file.UncertaintyModelReader;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.quantity.Length;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The uncertainty of a block of values is that which the budget of each explains, and the bound of a block holds for each. */
class ErrorColumnsTest {
    /** Both ways add the same squares in another order. */
    private static final double ROUNDINGS = 1e-9;

    @ParameterizedTest
    @CsvSource({
        "category-6a-cable, 100",
        "category-6a-cable, 60",
        "iec-category-6a-cable, 140",
        "us-filled-t1c-cable-24awg, 700"
    })
    void columnsSayWhatBudgetsExplain(String id, double metres) throws IOException {
        LimitSet set = read(id);
        CompleteResult complete = new CompleteResult(set, set.pairs().from());
        ReelResult result = complete.result()
                .withValues(
                        Length.ofMetres(metres),
                        complete.result().readings(),
                        complete.result().sweeps());
        CoreLayout core = new CoreLayout(complete.product());
        Evidence evidence = new Evidence(result, complete.product().pairs());
        Propagation propagation = new Propagation(Optional.of(model()), result);
        Correctors correctors = new Correctors(evidence, set);
        SeriesGatherer gatherer = new SeriesGatherer(evidence, core);
        int compared = 0;
        for (Requirement requirement : set.requirements()) {
            for (Series series :
                    gatherer.of(requirement, correctors.of(requirement)).series()) {
                for (int number = 0; number < Block.count(series.size()); number++) {
                    compared += compare(series, Block.of(number, series.size()), propagation);
                }
            }
        }
        assertTrue(compared > 100, "only " + compared + " values have an uncertainty");
    }

    private static int compare(Series series, Block block, Propagation propagation) {
        int compared = 0;
        double bound = series.errorAtMost(propagation, block);
        for (ErrorSide side : ErrorSide.values()) {
            double[] standards = series.errors(propagation, side, block).standards();
            for (int i = block.from(); i < block.to(); i++) {
                if (series.obstacle(i) != null) {
                    continue;
                }
                Budget budget = propagation.budget(series.influence(i), side);
                double standard = standards[i - block.from()];
                String what = series.property() + " of " + series.subject().words() + ", point " + i + ", " + side;
                assertEquals(budget.isKnown(), !Double.isNaN(standard), what);
                if (budget.isKnown()) {
                    assertEquals(budget.standard(), standard, ROUNDINGS * standard, what);
                    assertTrue(side == ErrorSide.OF_A_FAIL || !(standard > bound * (1 + ROUNDINGS)), what);
                    compared++;
                }
            }
        }
        return compared;
    }

    private static LimitSet read(String id) throws IOException {
        Path file = Path.of("limits", id + ".yaml");
        return new LimitSetReader(Laws::named).read(file.toString(), Files.readString(file));
    }

    private static UncertaintyModel model() throws IOException {
        Path file = Path.of("limits", "uncertainty", "test-bay-revision-2.yaml");
        return new UncertaintyModelReader().read(file.toString(), Files.readString(file));
    }
}
