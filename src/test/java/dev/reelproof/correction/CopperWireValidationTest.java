package dev.reelproof.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Copper wire against printed wire tables. */
class CopperWireValidationTest {
    private static final double MILLIMETRES_PER_INCH = 25.4;
    private static final double METRES_PER_FOOT = 0.3048;
    private static final double METRES_PER_KILOFOOT = 304.8;
    private static final double GRAMS_PER_POUND = 453.59237;
    private static final double KILOGRAMS_PER_POUND = 0.45359237;

    // Source: printed tables named in the file's header (read). Tolerance: half the last printed place of each figure.
    @ParameterizedTest(name = "{0} AWG")
    @CsvFileSource(resources = "/correction/copper-wire-published.csv", useHeadersInDisplayName = true)
    void printedTables(
            int gauge, Double inch, Double inchStep, Double ohm, Double ohmStep, Double pound, Double poundStep) {
        CopperWire wire = CopperWire.ofGauge(gauge);
        assertTrue(inch != null || ohm != null || pound != null, "a row without a figure proves nothing");
        if (inch != null) {
            assertEquals(inch, wire.diameterMillimetres() / MILLIMETRES_PER_INCH, inchStep / 2);
        }
        if (ohm != null) {
            assertEquals(ohm, wire.ohmsPerMetre() * METRES_PER_KILOFOOT, ohmStep / 2);
        }
        if (pound != null) {
            assertEquals(pound, poundsPerKilofoot(wire), poundStep / 2);
        }
    }

    // Source: computed independently with python3 (see the file's header). Its 10.371 is the rounded form of the
    // 10.37122
    // ohm-circular-mil/ft that 1/58 gives, 2.2e-5 less: that share of the figure is added to half the last place.
    @ParameterizedTest(name = "{0} AWG")
    @CsvFileSource(resources = "/correction/copper-wire-computed.csv", useHeadersInDisplayName = true)
    void computedTable(int gauge, double mil, double at20, double perKm, double at25, double at50, double at75) {
        CopperWire wire = CopperWire.ofGauge(gauge);
        assertEquals(mil, wire.diameterMillimetres() / MILLIMETRES_PER_INCH * 1000, 0.0005);
        assertResistance(perKm, wire.ohmsPerMetre() * 1000);
        assertResistance(at20, wire.ohmsPerMetre(Temperature.ofCelsius(20)) * METRES_PER_KILOFOOT);
        assertResistance(at25, wire.ohmsPerMetre(Temperature.ofCelsius(25)) * METRES_PER_KILOFOOT);
        assertResistance(at50, wire.ohmsPerMetre(Temperature.ofCelsius(50)) * METRES_PER_KILOFOOT);
        assertResistance(at75, wire.ohmsPerMetre(Temperature.ofCelsius(75)) * METRES_PER_KILOFOOT);
    }

    private static void assertResistance(double expected, double actual) {
        double halfLastPlace = 0.00005;
        double roundingOfResistivity = 2.2e-5 * expected;
        assertEquals(expected, actual, halfLastPlace + roundingOfResistivity);
    }

    // Source: 7 CFR 1755.870(b)(4), nominal diameters in mm (read). Tolerance: the regulation rounds the inch figure
    // first (0.0253 in =
    // 0.6426 mm, printed 0.643), so half the last place of the inch figure, 0.0013 mm, is added to half of the
    // millimetre's.
    @ParameterizedTest(name = "{0} AWG: {1} mm")
    @CsvSource({"22, 0.643", "24, 0.511"})
    void theRegulationsNominalDiameters(int gauge, double millimetres) {
        assertEquals(millimetres, CopperWire.ofGauge(gauge).diameterMillimetres(), 0.0013 + 0.0005);
    }

    // Source: Kuphaldt, Lessons in Electric Circuits V, 3.1 (read) prints 1.233 lb/kft for 24 AWG. It is a misprint:
    // all its neighbours agree
    // with density times area, and 404.0 circular mils times 0.003026971 is 1.2230.
    @Test
    void theBooksMassOf24GaugeIsAMisprint() {
        double mass = poundsPerKilofoot(CopperWire.ofGauge(24));
        assertEquals(1.2230, mass, 0.00005);
        assertTrue(Math.abs(mass - 1.233) > 0.009);
    }

    // Source: mass resistivity 0.15328 ohm g/m2 at 100 % IACS (NBS Handbook 100, read in notes that quote it).
    // Tolerance: half its last place.
    @ParameterizedTest(name = "{0} AWG")
    @CsvSource({"10", "22", "24", "26"})
    void resistanceTimesMassIsTheMassResistivity(int gauge) {
        CopperWire wire = CopperWire.ofGauge(gauge);
        assertEquals(0.15328, wire.ohmsPerMetre() * wire.gramsPerMetre(), 0.000005);
    }

    // Source: the 5,000 lb coil of 5/16 in rod is common practice (no source); the lengths follow from density and
    // constant volume,
    // computed independently for the commercial diameters. Tolerance: the last printed foot, and the last digit of
    // 3026.971 lb/kft/in2.
    @ParameterizedTest(name = "5,000 lb of 5/16 in rod drawn to {0} in: {1} ft")
    @CsvSource({
        "0.1019, 159079",
        "0.0808, 253011",
        "0.0253, 2580600",
        "0.0226, 3234036",
        "0.0201, 4088553",
        "0.0159, 6533824"
    })
    void aCoilOfRodDrawnToCommercialDiameters(double inch, double feet) {
        CopperWire rod = new CopperWire(0.3125 * MILLIMETRES_PER_INCH);
        CopperWire wire = new CopperWire(inch * MILLIMETRES_PER_INCH);
        Length rodLength = rod.lengthOfMass(5000 * KILOGRAMS_PER_POUND);

        double drawnFeet = rod.drawnTo(wire, rodLength).metres() / METRES_PER_FOOT;
        assertEquals(16_914.6, rodLength.metres() / METRES_PER_FOOT, 0.05);
        assertEquals(feet, drawnFeet, 0.5 + feet * 2e-7);
    }

    // Source: the trade's yardstick, 5,000 lb of 5/16 in rod give about 4.09 million feet of 24 AWG (common practice
    // for the coil, constant
    // volume for the figure). Tolerance: half the last place of the yardstick.
    @Test
    void aCoilOfRodGivesAbout4Point09MillionFeetOf24Gauge() {
        CopperWire rod = new CopperWire(0.3125 * MILLIMETRES_PER_INCH);
        Length rodLength = rod.lengthOfMass(5000 * KILOGRAMS_PER_POUND);
        double feet = rod.drawnTo(CopperWire.ofGauge(24), rodLength).metres() / METRES_PER_FOOT;
        assertEquals(4.09e6, feet, 0.005e6);
    }

    @Test
    void drawingKeepsTheMass() {
        CopperWire rod = new CopperWire(8);
        CopperWire wire = CopperWire.ofGauge(22);
        double byVolume = rod.drawnTo(wire, rod.lengthOfMass(2000)).metres();
        double byMass = wire.lengthOfMass(2000).metres();
        assertEquals(byMass, byVolume, byMass * 1e-12);
    }

    // Source: ASTM B258 (from memory): 36 AWG is 0.0050 in and 4/0 is 0.4600 in by definition; the ratio of 92 spans 39
    // steps.
    @Test
    void theTwoGaugesThatDefineTheSeries() {
        assertEquals(0.0050, CopperWire.ofGauge(36).diameterMillimetres() / MILLIMETRES_PER_INCH, 1e-15);
        assertEquals(0.4600, CopperWire.ofGauge(-3).diameterMillimetres() / MILLIMETRES_PER_INCH, 1e-13);
    }

    @Test
    void refusesWhatIsNoWire() {
        assertThrows(IllegalArgumentException.class, () -> CopperWire.ofGauge(-4));
        assertThrows(IllegalArgumentException.class, () -> CopperWire.ofGauge(41));
        for (double impossible : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThrows(IllegalArgumentException.class, () -> new CopperWire(impossible));
            assertThrows(
                    IllegalArgumentException.class, () -> CopperWire.ofGauge(24).lengthOfMass(impossible));
        }
        assertThrows(OutsideLawException.class, () -> CopperWire.ofGauge(24)
                .ohmsPerMetre(Temperature.ofCelsius(Math.nextUp(100.0))));
    }

    private static double poundsPerKilofoot(CopperWire wire) {
        return wire.gramsPerMetre() * METRES_PER_KILOFOOT / GRAMS_PER_POUND;
    }
}
