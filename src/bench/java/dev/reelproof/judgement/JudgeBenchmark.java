package dev.reelproof.judgement;

import dev.reelproof.correction.Laws;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.file.LimitSetReader;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
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
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** How long a judgement takes: of 1,000 points from both ends of a category 6A reel, and of the largest US terminating cable. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class JudgeBenchmark {
    private static final int POINTS = 1000;
    private static final double LAST_MEGAHERTZ = 500;

    /** A four-pair reel, every sweep of 1,000 points, those that have an end from both. */
    @State(Scope.Benchmark)
    public static class FourPairs {
        LimitSet set;
        Product product;
        ReelResult result;

        @Setup
        public void measure() throws IOException {
            set = shipped("category-6a-cable");
            CompleteResult complete = new CompleteResult(set, set.pairs().from());
            product = complete.product();
            double[] megahertz = new double[POINTS];
            for (int i = 0; i < POINTS; i++) {
                megahertz[i] = 1 + i * (LAST_MEGAHERTZ - 1) / (POINTS - 1);
            }
            FrequencyGrid grid = FrequencyGrid.ofMegahertz(megahertz);
            List<Sweep> sweeps = new ArrayList<>();
            for (Sweep sweep : complete.result().sweeps()) {
                sweeps.add(on(grid, sweep, sweep.subject().end()));
                if (sweep.subject().end() != null) {
                    sweeps.add(on(grid, sweep, End.FAR));
                }
            }
            ReelResult measured = complete.result();
            result = measured.withValues(measured.length(), measured.readings(), sweeps);
        }

        private static Sweep on(FrequencyGrid grid, Sweep sweep, End end) {
            double[] values = new double[grid.size()];
            for (int i = 0, at = 0; i < values.length; i++) {
                while (at + 1 < sweep.size() && sweep.grid().megahertz(at + 1) <= grid.megahertz(i)) {
                    at++;
                }
                values[i] = sweep.value(at);
            }
            return Sweep.of(
                    sweep.property(),
                    sweep.subject().at(end),
                    grid,
                    values,
                    sweep.unit(),
                    new Origin.JsonArray("/sweeps/0/values"));
        }
    }

    /** An 800-pair core in units of 12, every combination measured: 319,600 of them. */
    @State(Scope.Benchmark)
    public static class LargeCore {
        LimitSet set;
        Product product;
        ReelResult result;

        @Setup
        public void measure() throws IOException {
            set = shipped("us-terminating-cable-24awg");
            CompleteResult complete = new CompleteResult(set, set.pairs().to());
            product = complete.product();
            result = complete.result();
        }
    }

    private static LimitSet shipped(String id) throws IOException {
        Path file = Path.of("limits", id + ".yaml");
        return new LimitSetReader(Laws::named).read(file.toString(), Files.readString(file));
    }

    @Benchmark
    public Judgement category6aOfAThousandPointsFromBothEnds(FourPairs reel) {
        return Judge.judge(reel.result, reel.product, reel.set, Optional.empty(), "bench");
    }

    @Benchmark
    public Judgement terminatingCableOf800Pairs(LargeCore reel) {
        return Judge.judge(reel.result, reel.product, reel.set, Optional.empty(), "bench");
    }
}
