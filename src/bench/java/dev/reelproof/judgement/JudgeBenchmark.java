package dev.reelproof.judgement;

import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.quantity.FrequencyGrid;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long a judgement takes, without and with an uncertainty model: of 1,000 points from both ends of a category 6A reel, beside the
 * bare loop that does the same arithmetic; of the near-end crosstalk of a 25-pair unit; and of the largest US terminating cable.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class JudgeBenchmark {

    /** The uncertainty model of the bay, or none. */
    @State(Scope.Benchmark)
    public static class Model {
        /** Whether there is one. */
        @Param({"without", "with"})
        public String model;

        Optional<UncertaintyModel> used;

        @Setup
        public void read() {
            used = model.equals("with") ? Optional.of(Shipped.model()) : Optional.empty();
        }
    }

    /** A unit of 25 pairs, 300 combinations of 801 points, with the limits of category 5e. */
    @State(Scope.Benchmark)
    public static class TwentyFivePairs {
        private static final int POINTS = 801;

        LimitSet nextAlone;
        LimitSet withPowerSums;
        Product product;
        ReelResult result;

        @Setup
        public void measure() {
            LimitSet unit = Shipped.set("category-5e-25-pair-cable");
            List<Requirement> requirements = of(Property.NEXT, Shipped.set("category-5e-cable"));
            nextAlone = with(unit, requirements);
            requirements.addAll(of(Property.PS_NEXT, unit));
            withPowerSums = with(unit, requirements);
            CompleteResult complete =
                    new CompleteResult(withPowerSums, unit.pairs().from());
            product = complete.product();
            FrequencyGrid grid = Shipped.evenly(1, 100, POINTS);
            ReelResult measured = complete.result();
            result = measured.withValues(
                    measured.length(),
                    measured.readings(),
                    measured.sweeps().stream()
                            .map(sweep -> Shipped.on(grid, sweep, sweep.subject().end(), 1))
                            .toList());
        }

        private static List<Requirement> of(Property property, LimitSet set) {
            return new ArrayList<>(set.requirements().stream()
                    .filter(requirement -> requirement.property() == property)
                    .toList());
        }

        private static LimitSet with(LimitSet like, List<Requirement> requirements) {
            return new LimitSet(
                    like.id(),
                    like.revision(),
                    like.effective(),
                    like.title(),
                    like.pairs(),
                    like.referenceTemperature(),
                    like.referenceLength(),
                    like.rounding(),
                    like.grid(),
                    requirements,
                    like.allowance(),
                    like.leftOut(),
                    like.networkTerms(),
                    like.sha256(),
                    like.text(),
                    like.decisionRule());
        }
    }

    /** An 800-pair core in units of 12, every combination measured: 319,600 of them. */
    @State(Scope.Benchmark)
    public static class LargeCore {
        LimitSet set;
        Product product;
        ReelResult result;

        @Setup
        public void measure() {
            set = Shipped.set("us-terminating-cable-24awg");
            CompleteResult complete = new CompleteResult(set, set.pairs().to());
            product = complete.product();
            result = complete.result();
        }
    }

    static Judgement judge(ReelResult result, Product product, LimitSet set, Optional<UncertaintyModel> model) {
        return Judge.judge(result, product, set, model, "bench");
    }

    /** The arithmetic alone, to hold the next one against. */
    @Benchmark
    public double[] bareLoop(FourPairs reel, Bare bare) {
        return bare.loop.worstMargins();
    }

    /** The reel in plain arrays. */
    @State(Scope.Benchmark)
    public static class Bare {
        BareLoop loop;

        @Setup
        public void arrange(FourPairs reel) {
            loop = BareLoop.of(reel.result);
        }
    }

    @Benchmark
    public Judgement category6aOfAThousandPointsFromBothEnds(FourPairs reel, Model model) {
        return judge(reel.result, reel.product, reel.set, model.used);
    }

    @Benchmark
    public Judgement nextOf25Pairs(TwentyFivePairs unit, Model model) {
        return judge(unit.result, unit.product, unit.nextAlone, model.used);
    }

    @Benchmark
    public Judgement nextAndPowerSumsOf25Pairs(TwentyFivePairs unit, Model model) {
        return judge(unit.result, unit.product, unit.withPowerSums, model.used);
    }

    @Benchmark
    public Judgement terminatingCableOf800Pairs(LargeCore core, Model model) {
        return judge(core.result, core.product, core.set, model.used);
    }
}
