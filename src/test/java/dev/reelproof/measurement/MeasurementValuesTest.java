package dev.reelproof.measurement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import dev.reelproof.quantity.Length;
import dev.reelproof.quantity.ReadingUnit;
import dev.reelproof.quantity.Temperature;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What measured values refuse. */
class MeasurementValuesTest {
    private static final ReadingUnit OHM = ReadingUnit.parse("ohm");
    private static final Origin PLACE = new Origin.JsonValue("/readings/0");
    private static final Subject CONDUCTOR = Subject.ofConductor(1, Conductor.A);
    private static final OffsetDateTime FINISHED = OffsetDateTime.parse("2026-03-02T14:09:00Z");

    private static Reading reading(double value, double sent) {
        return new Reading(Property.CONDUCTOR_RESISTANCE, CONDUCTOR, value, sent, OHM, PLACE);
    }

    private static ReelResult result(String product, Length length, Temperature temperature) {
        return new ReelResult(
                product, length, temperature, null, null, null, FINISHED, List.of(), List.of(), List.of());
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void aReadingIsFiniteAsMeasuredAndAsSent(double endless) {
        assertEquals(9.1, reading(9.1, 9.1).value());
        refused(() -> reading(endless, 9.1));
        refused(() -> reading(9.1, endless));
    }

    @Test
    void aReadingIsInAUnitOfItsProperty() {
        refused(() -> new Reading(Property.CONDUCTOR_RESISTANCE, CONDUCTOR, 9.1, 9.1, ReadingUnit.parse("dB"), PLACE));
    }

    @Test
    void aResultNamesProductLengthAndTemperature() {
        Length length = Length.ofMetres(305);
        Temperature temperature = Temperature.ofCelsius(20);
        assertEquals("P-1", result("P-1", length, temperature).product());
        refused(() -> result(" ", length, temperature));
        refused(() -> result(null, length, temperature));
        refused(() -> result("P-1", null, temperature));
        refused(() -> result("P-1", length, null));
    }

    @Test
    void equipmentThatStatesAClassNamesIt() {
        refused(() -> new Equipment("na-07", null, Set.of(), " "));
    }

    @Test
    void linesOfAFileAreCountedFromOne() {
        assertEquals("sweeps.csv:2", new Origin.Lines("sweeps.csv", new int[] {2}).of(0));
        refused(() -> new Origin.Lines("sweeps.csv", new int[] {2, 0}));
        refused(() -> new Origin.Lines(" ", new int[] {2}));
        refused(() -> new Origin.Network("cable.s8p", new int[] {0}, List.of()));
        refused(() -> new Origin.Network("", new int[] {1}, List.of()));
    }

    private static void refused(Executable making) {
        assertThrows(IllegalArgumentException.class, making);
    }
}
