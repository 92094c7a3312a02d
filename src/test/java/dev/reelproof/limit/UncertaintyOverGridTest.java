package dev.reelproof.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The uncertainty on a grid is that of each reading, and a level has one to either side. */
class UncertaintyOverGridTest {
    private static final Bound.Curve FROM_1_TO_100_MHZ = new Bound.Curve(List.of(
            new Segment.RootPolynomial(1, 10, 0.1, 0, 0, 0), new Segment.RootPolynomial(10, 100, 0, 0.02, 0.004, 0)));
    private static final double ROUNDINGS = 1e-12;

    private static InstrumentUncertainty uncertainty(
            double constant,
            double proportional,
            boolean overFrequency,
            Optional<LevelSide> side,
            OptionalDouble noiseFloor) {
        return new InstrumentUncertainty(
                constant,
                proportional,
                overFrequency ? Optional.of(FROM_1_TO_100_MHZ) : Optional.empty(),
                side,
                noiseFloor,
                side.isPresent() ? "dB" : "ns",
                2,
                InstrumentUncertainty.ALL_COMMON,
                new Source("own", true));
    }

    private static InstrumentUncertainty level(LevelSide side, double constant, double noiseFloor) {
        return uncertainty(constant, 0, false, Optional.of(side), OptionalDouble.of(noiseFloor));
    }

    @Property
    void onAGridItIsThatOfEachReadingToTheLastDigit(
            @ForAll @DoubleRange(min = 0, max = 3) @Scale(3) double constant,
            @ForAll @DoubleRange(min = 0, max = 0.1) @Scale(4) double proportional,
            @ForAll boolean overFrequency,
            @ForAll Optional<LevelSide> side,
            @ForAll boolean noise,
            @ForAll @DoubleRange(min = 20, max = 120) @Scale(2) double floor,
            @ForAll @Size(min = 1, max = 20) List<@DoubleRange(min = 0.5, max = 150) @Scale(3) Double> frequencies,
            @ForAll @DoubleRange(min = -10, max = 140) @Scale(6) double reading) {
        InstrumentUncertainty uncertainty = uncertainty(
                constant,
                proportional,
                overFrequency,
                side,
                side.isPresent() && noise ? OptionalDouble.of(floor) : OptionalDouble.empty());
        double[] megahertz =
                frequencies.stream().mapToDouble(Double::doubleValue).toArray();
        UncertaintyOverGrid overGrid = uncertainty.over(megahertz);
        for (int i = 0; i < megahertz.length; i++) {
            double there = reading + 0.37 * i;
            assertEquals(uncertainty.standard(there, megahertz[i]).orElse(Double.NaN), overGrid.standard(there, i), 0);
            for (LevelSide towards : LevelSide.values()) {
                assertEquals(
                        uncertainty.standard(there, megahertz[i], towards).orElse(Double.NaN),
                        overGrid.standard(there, i, towards),
                        0);
            }
        }
    }

    @Test
    void outsideTheCurveThereIsNone() {
        UncertaintyOverGrid overGrid = uncertainty(1, 0, true, Optional.empty(), OptionalDouble.empty())
                .over(new double[] {0.9, 1, 100, 101});
        assertTrue(Double.isNaN(overGrid.standard(5, 0)));
        assertTrue(overGrid.standard(5, 1) > 0.5);
        assertTrue(overGrid.standard(5, 2) > 0.5);
        assertTrue(Double.isNaN(overGrid.standard(5, 3)));
    }

    /** The other grid must not change under the first: the frequencies are worked out when it is made. */
    @Test
    void laterChangesOfTheFrequenciesDoNotEnter() {
        double[] megahertz = {5};
        UncertaintyOverGrid overGrid = uncertainty(1, 0, true, Optional.empty(), OptionalDouble.empty())
                .over(megahertz);
        double before = overGrid.standard(5, 0);
        megahertz[0] = 90;
        assertEquals(before, overGrid.standard(5, 0));
    }

    @ParameterizedTest
    @CsvSource({
        // Arithmetic: noise 20 dB below the level is 10 % of its amplitude. 0.5 dB lower is +5.9254 %, higher −5.5939
        // %.
        // √(5.9254² + 10²) = 11.6238 %: 20 lg 1.116238 = 0.95513 dB; √(5.5939² + 10²) = 11.4583 %: −20 lg 0.885417 =
        // 1.05704 dB.
        "LOWER, 0.95513, 1.05704",
        "HIGHER, 1.05704, 0.95513"
    })
    void aFailingLevelHasTheUncertaintyOfItsOtherSide(LevelSide side, double passing, double failing) {
        InstrumentUncertainty level = level(side, 0.5, 80);
        assertEquals(passing / 2, level.standard(60, 10).orElseThrow(), 1e-5);
        assertEquals(passing / 2, level.standard(60, 10, side).orElseThrow(), 1e-5);
        assertEquals(failing / 2, level.standard(60, 10, side.other()).orElseThrow(), 1e-5);
    }

    @Test
    void aLevelThatMayBeNoiseAltogetherHasNoBoundAbove() {
        for (LevelSide side : LevelSide.values()) {
            InstrumentUncertainty level = level(side, 0.5, 80);
            for (double reading : new double[] {80, 81, 120}) {
                assertEquals(OptionalDouble.empty(), level.standard(reading, 10, LevelSide.HIGHER));
                assertTrue(level.standard(reading, 10, LevelSide.LOWER).isPresent());
            }
        }
    }

    @Test
    void whatIsNoLevelHasTheSameOnBothSides() {
        InstrumentUncertainty delay = uncertainty(3, 0.01, false, Optional.empty(), OptionalDouble.empty());
        for (LevelSide side : LevelSide.values()) {
            // 3 ns and 1 % of 400 ns: 3, 4, 5; with a factor of 2
            assertEquals(2.5, delay.standard(400, Double.NaN, side).orElseThrow(), ROUNDINGS);
        }
    }
}
