package dev.reelproof.judgement;

import dev.reelproof.limit.Domain;
import dev.reelproof.limit.Requirement;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Sweep;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Finds where a reel is too short for a value to be representative, where a requirement asks for a least loss there and back.
 *
 * <p>What comes back from the far end is weakened there and back, by twice the insertion loss. Where that is little, the value is
 * that of the far end's termination as much as the cable's.
 */
final class ShortReel {
    private static final int THERE_AND_BACK = 2;

    /** Digits of a value in a sentence. */
    private static final MathContext DIGITS_TOLD = new MathContext(4);

    private final Evidence evidence;
    private final OptionalDouble leastRoundTripLoss;
    private final Domain domain;
    private final String source;

    ShortReel(Evidence evidence, Requirement requirement) {
        this.evidence = evidence;
        this.leastRoundTripLoss = requirement.particulars().leastRoundTripLoss();
        this.domain = requirement.domain();
        this.source = requirement.source().words();
    }

    /** The corrected sweep with an obstacle at each point at which the reel is too short, or not known to be long enough. */
    CorrectedColumn among(Sweep sweep, CorrectedColumn corrected) {
        if (leastRoundTripLoss.isEmpty()) {
            return corrected;
        }
        double least = leastRoundTripLoss.getAsDouble();
        double[] loss = roundTripLoss(sweep);
        List<Integer> unknown = new ArrayList<>();
        List<Integer> small = new ArrayList<>();
        double smallest = least;
        for (int i = 0; i < loss.length; i++) {
            if (!domain.holds(sweep.grid().megahertz(i))) {
                continue;
            }
            if (Double.isNaN(loss[i])) {
                unknown.add(i);
            } else if (!(loss[i] >= least)) {
                small.add(i);
                smallest = Math.min(smallest, loss[i]);
            }
        }
        if (unknown.isEmpty() && small.isEmpty()) {
            return corrected;
        }
        @Nullable
        Obstacle[] reasons = corrected.obstacles().length == 0
                ? new @Nullable Obstacle[loss.length]
                : corrected.obstacles().clone();
        fill(reasons, unknown, obstacle(Obstacle.Kind.LENGTH_NOT_KNOWN_ENOUGH, sweep, unknown, Map.of()));
        fill(
                reasons,
                small,
                obstacle(
                        Obstacle.Kind.LENGTH_TOO_SHORT,
                        sweep,
                        small,
                        Map.of(
                                "least",
                                String.valueOf(least),
                                "smallest",
                                BigDecimal.valueOf(smallest).round(DIGITS_TOLD).toPlainString())));
        return new CorrectedColumn(corrected.values(), reasons);
    }

    /** Sets a reason where there is none yet. */
    private static void fill(@Nullable Obstacle[] reasons, List<Integer> points, Obstacle reason) {
        points.stream().filter(i -> reasons[i] == null).forEach(i -> reasons[i] = reason);
    }

    /** That some points of a sweep cannot be judged for the reel's length; with the frequencies that they span. */
    private static Obstacle obstacle(
            Obstacle.Kind kind, Sweep sweep, List<Integer> points, Map<String, String> figures) {
        Map<String, String> parts = new HashMap<>(figures);
        parts.put("property", sweep.property().id());
        parts.put("where", sweep.subject().words());
        if (!points.isEmpty()) {
            parts.put("from", String.valueOf(sweep.grid().megahertz(points.get(0))));
            parts.put("to", String.valueOf(sweep.grid().megahertz(points.get(points.size() - 1))));
        }
        return new Obstacle(kind, parts);
    }

    /** That the reel is long enough at a point, with its figures; empty when the requirement does not ask, or it is not known. */
    Optional<Step> longEnough(Sweep sweep, int index) {
        double loss = leastRoundTripLoss.isEmpty() ? Double.NaN : roundTripLoss(sweep)[index];
        return Double.isNaN(loss)
                ? Optional.empty()
                : Optional.of(new Step(
                        "representative",
                        "loss there and back, twice the measured insertion loss of the pair over the reel; at least "
                                + leastRoundTripLoss.getAsDouble() + " dB is asked for",
                        loss,
                        Property.INSERTION_LOSS.canonicalUnit(),
                        source));
    }

    private double[] roundTripLoss(Sweep sweep) {
        double[] loss = evidence.lossPerMetre(sweep.subject().pairNumber(), sweep.grid())
                .clone();
        for (int i = 0; i < loss.length; i++) {
            loss[i] = THERE_AND_BACK * loss[i] * evidence.result().length().metres();
        }
        return loss;
    }
}
