package dev.reelproof.judgement;

import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.correction.Laws;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.file.LimitSetReader;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.Kind;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A worse measurement never gets a better margin, whatever the requirement. */
class MarginPropertyTest {
    private static final long SEED = 20_270_101;
    private static final int ROUNDS = 25;

    /** A worse value may spread the values, which these two judge, or draw two values together. */
    private static final Set<Statistic> NOT_MONOTONE = Set.of(Statistic.RMS_DEVIATION, Statistic.MEAN_MINUS_SIGMA);

    private static final Set<Property> DIFFERENCES =
            Set.of(Property.RESISTANCE_UNBALANCE, Property.RESISTANCE_UNBALANCE_BETWEEN_PAIRS, Property.DELAY_SKEW);

    @ParameterizedTest
    @CsvSource({
        "category-6a-cable, 4",
        "category-6a-cable-revision-2, 4",
        "category-6-cable, 4",
        "category-5e-cable, 4",
        "us-terminating-cable-24awg, 26",
        "us-buried-wire-22awg, 3"
    })
    void aWorseValueNeverHasABetterMargin(String id, int pairs) throws Exception {
        Path file = Path.of("limits", id + ".yaml");
        LimitSet set = new LimitSetReader(Laws::named).read(file.toString(), Files.readString(file));
        CompleteResult complete = new CompleteResult(set, pairs);
        Random random = new Random(SEED);
        ReelResult result = complete.result();
        List<Finding> before = judged(result, complete.product(), set);
        for (int round = 0; round < ROUNDS; round++) {
            Requirement worsened =
                    set.requirements().get(random.nextInt(set.requirements().size()));
            if (worsened.limit().sense().equals("between")) {
                continue;
            }
            boolean upwards = worsened.limit().upper().isPresent();
            ReelResult worse = worse(result, measuredFor(worsened.property()), upwards, random);
            List<Finding> after = judged(worse, complete.product(), set);
            for (int i = 0; i < before.size(); i++) {
                Requirement requirement = requirement(set, before.get(i), pairs);
                if (isMonotone(requirement, measuredFor(worsened.property()))
                        && upwards == requirement.limit().upper().isPresent()) {
                    double was = before.get(i).figure().margin();
                    double is = after.get(i).figure().margin();
                    String what = requirement.id() + " after " + worsened.id() + " grew worse: " + was + " to " + is
                            + ", seed " + SEED + ", round " + round;
                    assertTrue(is <= was + Math.ulp(was), what);
                }
            }
            result = worse;
            before = after;
        }
    }

    private static boolean isMonotone(Requirement requirement, Property changed) {
        return (requirement.property() == changed
                        || requirement.property().parts().contains(changed))
                && !requirement.limit().sense().equals("between")
                && !NOT_MONOTONE.contains(requirement.statistic())
                && !DIFFERENCES.contains(requirement.property());
    }

    private static Property measuredFor(Property property) {
        return property.parts().stream().findFirst().orElse(property);
    }

    private static Requirement requirement(LimitSet set, Finding finding, int pairs) {
        return set.requirements().stream()
                .filter(one -> one.id().equals(finding.requirement()))
                .filter(one -> one.pairs().isEmpty() || one.pairs().get().holds(pairs))
                .findFirst()
                .orElseThrow();
    }

    private static List<Finding> judged(ReelResult result, Product product, LimitSet set) {
        return Judge.judge(result, product, set, Optional.empty(), "test").findings();
    }

    /** The same result with one value, or one sweep from some point on, on the worse side of what it was. */
    private static ReelResult worse(ReelResult result, Property property, boolean upwards, Random random) {
        List<Reading> readings = new ArrayList<>(result.readings());
        List<Sweep> sweeps = new ArrayList<>(result.sweeps());
        List<Integer> places = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            if (readings.get(i).property() == property) {
                places.add(i);
            }
        }
        for (int i = 0; i < sweeps.size(); i++) {
            if (sweeps.get(i).property() == property) {
                places.add(i);
            }
        }
        int place = places.get(random.nextInt(places.size()));
        double size = random.nextDouble();
        if (property.isSweep()) {
            Sweep sweep = sweeps.get(place);
            double[] values = sweep.sent();
            for (int i = random.nextInt(values.length); i < values.length; i++) {
                values[i] = worse(values[i], upwards, size, sweep.unit().kind());
            }
            sweeps.set(place, Sweep.of(property, sweep.subject(), sweep.grid(), values, sweep.unit(), sweep.origin()));
        } else {
            Reading reading = readings.get(place);
            double value = worse(reading.sent(), upwards, size, reading.unit().kind());
            readings.set(place, Reading.of(property, reading.subject(), value, reading.unit(), reading.origin()));
        }
        return result.withValues(result.length(), readings, sweeps);
    }

    private static double worse(double value, boolean upwards, double size, Kind kind) {
        if (kind == Kind.LEVEL) {
            return upwards ? value + size : value - size;
        }
        return kind == Kind.COUNT ? value + 1 : upwards ? value * (1 + size) : value * (1 - size / 2);
    }
}
