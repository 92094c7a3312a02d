package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.measurement.Property;
import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

/** A reel that is cut, and one that is spliced together again. */
class WholeReelPropertyTest {
    // A handful of roundings, each of 1.1e-16.
    private static final double ROUNDINGS = 1e-14;
    // Levels of up to 200 dB keep 3e-14 dB a rounding.
    private static final double DECIBEL_ROUNDINGS = 1e-11;
    private static final Temperature ANY = Temperature.ofCelsius(20);
    private static final Set<Property> ADDING = EnumSet.of(
            Property.CONDUCTOR_RESISTANCE,
            Property.LOOP_RESISTANCE,
            Property.MUTUAL_CAPACITANCE,
            Property.CAPACITANCE_UNBALANCE_TO_GROUND,
            Property.INSERTION_LOSS,
            Property.PROPAGATION_DELAY,
            Property.DELAY_SKEW);

    @Provide
    Arbitrary<Property> properties() {
        return Arbitraries.of(Property.class)
                .filter(property -> WholeReel.lengthLaw(property).isPresent());
    }

    @net.jqwik.api.Property
    void twoPiecesSplicedAreTheReelAgain(
            @ForAll("properties") Property property,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value,
            @ForAll @DoubleRange(min = 10, max = 5_000) @Scale(9) double metres,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) @Scale(9) double share) {
        Length reel = Length.ofMetres(metres);
        double one = WholeReel.valueOfPiece(property, value, reel, Length.ofMetres(metres * share));
        double other = WholeReel.valueOfPiece(property, value, reel, Length.ofMetres(metres * (1 - share)));
        if (ADDING.contains(property)) {
            assertEquals(value, one + other, value * ROUNDINGS);
        } else if (property == Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR) {
            assertEquals(value, Math.hypot(one, other), value * ROUNDINGS);
        } else if (property == Property.INSULATION_RESISTANCE) {
            assertEquals(value, one * other / (one + other), value * ROUNDINGS);
        } else {
            assertEquals(value, PowerSum.of(one, other), DECIBEL_ROUNDINGS);
        }
    }

    @net.jqwik.api.Property
    void whatIsReferredToALengthIsTheSameForEveryPiece(
            @ForAll("properties") Property property,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value,
            @ForAll @DoubleRange(min = 10, max = 5_000) @Scale(9) double metres,
            @ForAll @DoubleRange(min = 0.01, max = 1) @Scale(9) double share) {
        CorrectionLaw law = WholeReel.lengthLaw(property).orElseThrow();
        Length reel = Length.ofMetres(metres);
        Length piece = Length.ofMetres(metres * share);
        double ofReel = law.correct(value, conditions(reel));
        double ofPiece = law.correct(WholeReel.valueOfPiece(property, value, reel, piece), conditions(piece));
        boolean decibels = law instanceof FarEndCrosstalkLength;
        assertEquals(ofReel, ofPiece, decibels ? DECIBEL_ROUNDINGS : ofReel * ROUNDINGS);
    }

    @net.jqwik.api.Property
    void aShorterPieceIsNeverWorse(
            @ForAll("properties") Property property,
            @ForAll @DoubleRange(min = 1, max = 200) @Scale(9) double value,
            @ForAll @DoubleRange(min = 10, max = 5_000) @Scale(9) double metres,
            @ForAll @DoubleRange(min = 0.01, max = 0.99) @Scale(9) double share) {
        double piece =
                WholeReel.valueOfPiece(property, value, Length.ofMetres(metres), Length.ofMetres(metres * share));
        boolean lessIsBetter = ADDING.contains(property) || property == Property.CAPACITANCE_UNBALANCE_PAIR_TO_PAIR;
        assertTrue(lessIsBetter ? piece < value : piece > value);
        assertEquals(
                value, WholeReel.valueOfPiece(property, value, Length.ofMetres(metres), Length.ofMetres(metres)), 0);
    }

    private static MeasurementConditions conditions(Length length) {
        return new MeasurementConditions(ANY, length, ANY, Length.ofMetres(100), OptionalDouble.empty());
    }
}
