package dev.reelproof.judgement;

import dev.reelproof.correction.Laws;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.limit.file.LimitSetReader;
import dev.reelproof.limit.file.UncertaintyModelReader;
import dev.reelproof.measurement.End;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.FrequencyGrid;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** What the benchmarks share: the shipped limit sets and uncertainty model, and sweeps on a grid of their own. */
final class Shipped {
    private static final Path LIMITS = Path.of("limits");

    private Shipped() {}

    static LimitSet set(String id) {
        return new LimitSetReader(Laws::named).read(id, text(LIMITS.resolve(id + ".yaml")));
    }

    static UncertaintyModel model() {
        Path file = LIMITS.resolve("uncertainty").resolve("test-bay-revision-2.yaml");
        return new UncertaintyModelReader().read(file.toString(), text(file));
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Frequencies at equal steps, in MHz. */
    static FrequencyGrid evenly(double first, double last, int points) {
        double[] megahertz = new double[points];
        for (int i = 0; i < points; i++) {
            megahertz[i] = first + i * (last - first) / (points - 1);
        }
        return FrequencyGrid.ofMegahertz(megahertz);
    }

    /** A sweep on another grid, each point with the value of the frequency below it. */
    static Sweep on(FrequencyGrid grid, Sweep sweep, End end, double factor) {
        double[] values = new double[grid.size()];
        for (int i = 0, at = 0; i < values.length; i++) {
            while (at + 1 < sweep.size() && sweep.grid().megahertz(at + 1) <= grid.megahertz(i)) {
                at++;
            }
            values[i] = factor * sweep.value(at);
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
