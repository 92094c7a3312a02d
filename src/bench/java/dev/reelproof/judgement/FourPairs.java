package dev.reelproof.judgement;

import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import dev.reelproof.quantity.Length;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** A four-pair reel of category 6A, every sweep of 1,000 points, those that have an end from both. */
@State(Scope.Benchmark)
public class FourPairs {
    private static final int POINTS = 1000;
    private static final double LAST_MEGAHERTZ = 500;

    /** What grows with length; the rest of the sweeps stay as they are. */
    private static final Set<Property> BY_LENGTH = EnumSet.of(
            Property.CONDUCTOR_RESISTANCE,
            Property.MUTUAL_CAPACITANCE,
            Property.CAPACITANCE_UNBALANCE_TO_GROUND,
            Property.INSERTION_LOSS,
            Property.PROPAGATION_DELAY);

    /** At the reference length of 100 m near-end crosstalk is not corrected; at less it is, by the loss. */
    @Param({"100", "60"})
    public double metres;

    LimitSet set;
    Product product;
    ReelResult result;

    /** Measures the reel, and refuses to be timed where the bare loop does not find what the judgement finds. */
    @Setup
    public void measure() {
        set = Shipped.set("category-6a-cable");
        CompleteResult complete = new CompleteResult(set, set.pairs().from());
        product = complete.product();
        FrequencyGrid grid = Shipped.evenly(1, LAST_MEGAHERTZ, POINTS);
        double share = metres / set.referenceLength().metres();
        List<Sweep> sweeps = new ArrayList<>();
        for (Sweep sweep : complete.result().sweeps()) {
            double factor = BY_LENGTH.contains(sweep.property()) ? share : 1;
            sweeps.add(Shipped.on(grid, sweep, sweep.subject().end(), factor));
            if (sweep.subject().end() != null) {
                sweeps.add(Shipped.on(grid, sweep, End.FAR, factor));
            }
        }
        List<Reading> readings = new ArrayList<>();
        for (Reading reading : complete.result().readings()) {
            double factor = BY_LENGTH.contains(reading.property()) ? share : 1;
            readings.add(Reading.of(
                    reading.property(), reading.subject(), factor * reading.sent(), reading.unit(), reading.origin()));
        }
        result = complete.result().withValues(Length.ofMetres(metres), readings, sweeps);
        BareLoop.of(result).requireSameAs(JudgeBenchmark.judge(result, product, set, Optional.empty()));
    }
}
