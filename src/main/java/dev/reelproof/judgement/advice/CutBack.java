package dev.reelproof.judgement.advice;

import dev.reelproof.correction.Laws;
import dev.reelproof.correction.WholeReel;
import dev.reelproof.judgement.Figure;
import dev.reelproof.judgement.Finding;
import dev.reelproof.judgement.Judge;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.Requirement;
import dev.reelproof.limit.Statistic;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.quantity.Kind;
import dev.reelproof.quantity.Length;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Finds the length to which a failing reel would have to be cut, taking the cable to be uniform along its length.
 *
 * <p>Cutting changes only a requirement on the value of the whole reel. One that refers its values to a length judges the cable and
 * not the reel; what is measured into one end comes mostly from the cable near that end; and where a fault sits is not known.
 */
final class CutBack {
    /** No shorter piece is advised; common practice, no source. Metres. */
    private static final double SHORTEST_PIECE = 1;

    /** A piece is told in whole steps, rounded down, so that the length told passes. */
    private static final double STEPS_PER_METRE = 100;

    private static final Set<Property> MEASURED_INTO_AN_END =
            EnumSet.of(Property.NEXT, Property.PS_NEXT, Property.RETURN_LOSS, Property.TCL);

    private final ReelResult result;
    private final Product product;
    private final LimitSet limitSet;
    private final Optional<UncertaintyModel> uncertaintyModel;
    private final Set<Integer> varying;

    /** @param own the findings of the whole reel under its own set */
    CutBack(
            ReelResult result,
            Product product,
            LimitSet limitSet,
            Optional<UncertaintyModel> uncertaintyModel,
            List<Finding> own) {
        this.result = result;
        this.product = product;
        this.limitSet = limitSet;
        this.uncertaintyModel = uncertaintyModel;
        this.varying = own.stream()
                .flatMap(finding -> finding.varyingPairs().stream())
                .collect(Collectors.toUnmodifiableSet());
    }

    /** Whether a requirement judges the value of the whole reel, which changes when the reel is cut. */
    static boolean changes(Requirement requirement) {
        return WholeReel.lengthLaw(requirement.property()).isPresent()
                && requirement.statistic() != Statistic.RMS_DEVIATION
                && !isReferredToALength(requirement);
    }

    private static boolean isReferredToALength(Requirement requirement) {
        return requirement.unit().referredTo().isPresent()
                || requirement.laws().stream().anyMatch(law -> Laws.isOfLength(law.name()));
    }

    /**
     * The greatest length at which every requirement on the value of the whole reel passes; empty when there is none.
     *
     * <p>Halves the interval: as a piece gets shorter, it stops being too long for a requirement once and for all. Checks at the end
     * that the piece is not too short for another requirement: if it is, a longer one is too long and a shorter one only worse.
     */
    Optional<Length> greatestLength() {
        long tooLong = (long) Math.ceil(result.length().metres() * STEPS_PER_METRE);
        long notTooLong = Math.round(SHORTEST_PIECE * STEPS_PER_METRE);
        if (!(notTooLong < tooLong) || isTooLong(notTooLong)) {
            return Optional.empty();
        }
        while (tooLong - notTooLong > 1) {
            long middle = notTooLong + (tooLong - notTooLong) / 2;
            if (isTooLong(middle)) {
                tooLong = middle;
            } else {
                notTooLong = middle;
            }
        }
        boolean passes = findings(notTooLong).stream()
                .noneMatch(finding -> finding.outcome().rejects());
        return passes ? Optional.of(length(notTooLong)) : Optional.empty();
    }

    private static Length length(long steps) {
        return Length.ofMetres(steps / STEPS_PER_METRE);
    }

    private boolean isTooLong(long steps) {
        return findings(steps).stream()
                .anyMatch(finding -> finding.outcome().rejects() && failsMoreWhenLonger(finding));
    }

    private List<Finding> findings(long steps) {
        return Judge.findings(piece(length(steps)), product, limitSet, uncertaintyModel, CutBack::changes, varying);
    }

    private boolean failsMoreWhenLonger(Finding finding) {
        Requirement requirement = limitSet.requirement(finding.requirement(), product.pairs())
                .filter(CutBack::changes)
                .orElseThrow();
        Figure figure = Objects.requireNonNull(finding.figure(), "a finding that fails has a figure");
        double frequency = figure.megahertz() == null ? 0 : figure.megahertz();
        boolean missesUpper = requirement.limit().lower().isEmpty()
                || requirement
                        .limit()
                        .upper()
                        .filter(upper -> upper.at(frequency) == figure.limit())
                        .isPresent();
        Length one = Length.ofMetres(1);
        boolean grows = WholeReel.valueOfPiece(requirement.property(), 1, one, Length.ofMetres(2)) > 1;
        return missesUpper == grows;
    }

    /** What a piece is expected to measure. Values that were sent for a length of cable stay as they are. */
    private ReelResult piece(Length piece) {
        List<Reading> readings = result.readings().stream()
                .map(reading -> reading.unit().referredTo().isPresent() ? reading : cut(reading, piece))
                .toList();
        List<Sweep> sweeps = result.sweeps().stream()
                .map(sweep -> sweep.unit().referredTo().isPresent() ? sweep : cut(sweep, piece))
                .toList();
        return result.withValues(piece, readings, sweeps);
    }

    private Reading cut(Reading reading, Length piece) {
        if (WholeReel.lengthLaw(reading.property()).isEmpty()) {
            return reading;
        }
        double factor = reading.unit().numeratorFactorTo(reading.property().canonicalUnit());
        return Reading.of(
                reading.property(),
                reading.subject(),
                WholeReel.valueOfPiece(reading.property(), reading.value(), result.length(), piece) / factor,
                reading.unit(),
                reading.origin());
    }

    private Sweep cut(Sweep sweep, Length piece) {
        if (WholeReel.lengthLaw(sweep.property()).isEmpty()) {
            return sweep;
        }
        double factor = sweep.unit().numeratorFactorTo(sweep.property().canonicalUnit());
        double[] sent = new double[sweep.size()];
        for (int i = 0; i < sent.length; i++) {
            sent[i] = WholeReel.valueOfPiece(sweep.property(), sweep.value(i), result.length(), piece) / factor;
        }
        return Sweep.of(sweep.property(), sweep.subject(), sweep.grid(), sent, sweep.unit(), sweep.origin());
    }

    /** What cutting does to the value that a requirement judges. */
    static CuttingEffect effect(Requirement requirement) {
        Property property = requirement.property();
        if (changes(requirement)) {
            return CuttingEffect.CHANGES_WITH_THE_LENGTH;
        }
        if (isReferredToALength(requirement) && WholeReel.lengthLaw(property).isPresent()) {
            return CuttingEffect.REFERRED_TO_A_LENGTH;
        }
        if (requirement.unit().kind() == Kind.COUNT) {
            return CuttingEffect.COUNTS_FAULTS;
        }
        if (MEASURED_INTO_AN_END.contains(property)) {
            return CuttingEffect.MEASURED_INTO_AN_END;
        }
        if (requirement.unit().kind() == Kind.RATIO && property.isScalar() && !property.isSampled()) {
            return CuttingEffect.RATIO;
        }
        return property.isSampled() ? CuttingEffect.OF_THE_MATERIAL : CuttingEffect.NO_KNOWN_LAW;
    }
}
