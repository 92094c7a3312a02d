package dev.reelproof.genealogy.balance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Implausibility;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotFault;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.Setting;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.genealogy.admission.LotChecks;
import dev.reelproof.genealogy.admission.Stock;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which links are told as implausible: against the conductor that one rod coil of 5,000 lb gives. */
class BalanceValidationTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");

    /**
     * Feet of conductor in 5,000 lb of copper of 8.89 g/cm³, by volume constancy: computed from the density in NBS Handbook 100 (read
     * in notes that quote it) for the commercial diameters; the coil's mass is common practice, no source. The tolerance of the check is
     * 2.5 %.
     */
    @ParameterizedTest
    @CsvSource({"0.1019, 159079", "0.0253, 2580600", "0.0226, 3234036", "0.0201, 4088553", "0.0159, 6533824"})
    void aCoilGivesOnlySoMuchConductor(double inches, double feet) {
        assertEquals(List.of(), drawn(inches, feet), "all of it");
        assertEquals(List.of(), drawn(inches, feet * 1.02), "2 % more: a diameter that is 1 % off");
        assertTrue(only(drawn(inches, feet * 1.03)).contains("more came out than went in"), "3 % more");
        assertEquals(List.of(), drawn(inches, feet * 0.85), "15 % less: ends and scrap");
        assertTrue(only(drawn(inches, feet * 0.75)).contains("not accounted for"), "a quarter less");
    }

    private static List<Implausibility> drawn(double inches, double feet) {
        Lot wire = lot(
                LotKind.ANNEALED_CONDUCTOR,
                new Amount(feet, "ft"),
                Map.of("diameter", Setting.ofNumber(inches, "in")),
                List.of(),
                input("ROD", 5_000, "lb"));
        return LotChecks.implausible(wire, stocks(stock("ROD", LotKind.ROD, 5_000, "lb", null)));
    }

    private static String only(List<Implausibility> found) {
        assertEquals(1, found.size(), found.toString());
        return found.get(0).message();
    }

    @Test
    void readsTheDiameterInAllWaysInWhichItIsTold() {
        double awg24 = 0.127 * Math.pow(92, 12.0 / 39);
        for (Setting gauge : List.of(
                Setting.ofText("24 AWG"),
                Setting.ofText("AWG 24"),
                Setting.ofText("24"),
                Setting.ofNumber(24, "AWG"))) {
            assertEquals(
                    awg24,
                    CopperDiameter.of(LotKind.INSULATED_CONDUCTOR, Map.of("gauge", gauge), List.of())
                            .orElseThrow(),
                    1e-12);
        }
        Sample over = new Sample("diameter", 0.95, "mm", null, null, null);
        assertEquals(OptionalDouble.empty(), CopperDiameter.of(LotKind.INSULATED_CONDUCTOR, Map.of(), List.of(over)));
        assertEquals(OptionalDouble.of(0.95), CopperDiameter.of(LotKind.ANNEALED_CONDUCTOR, Map.of(), List.of(over)));
        assertEquals(
                OptionalDouble.of(0.5),
                CopperDiameter.of(
                        LotKind.INSULATED_CONDUCTOR,
                        Map.of("Conductor diameter", Setting.ofNumber(0.5, "mm")),
                        List.of(over)));
        for (Setting none : List.of(Setting.ofText("99 AWG"), Setting.ofText("thick"), Setting.ofNumber(-1, "mm"))) {
            assertEquals(
                    OptionalDouble.empty(),
                    CopperDiameter.of(LotKind.ANNEALED_CONDUCTOR, Map.of("gauge", none), List.of()));
        }
    }

    @Test
    void comparesTwoWiresByTheirVolume() {
        // L1/L0 = (d0/d1)²: 1 km of 1 mm is 4 km of 0.5 mm
        Stock thick = stock("BW", LotKind.BREAKDOWN_WIRE, 1, "km", 1.0);
        Map<String, Setting> thin = Map.of("diameter", Setting.ofNumber(0.5, "mm"));
        LotInput all = input("BW", 1, "km");
        assertEquals(
                List.of(),
                LotChecks.implausible(
                        lot(LotKind.ANNEALED_CONDUCTOR, new Amount(4, "km"), thin, List.of(), all), stocks(thick)));
        assertTrue(only(LotChecks.implausible(
                        lot(LotKind.ANNEALED_CONDUCTOR, new Amount(4.2, "km"), thin, List.of(), all), stocks(thick)))
                .contains("more came out"));
    }

    @Test
    void saysNothingWhereNoDiameterIsTold() {
        assertEquals(
                List.of(),
                LotChecks.implausible(
                        lot(
                                LotKind.ANNEALED_CONDUCTOR,
                                new Amount(1e6, "km"),
                                Map.of(),
                                List.of(),
                                input("ROD", 1, "kg")),
                        stocks(stock("ROD", LotKind.ROD, 1, "kg", null))));
    }

    @ParameterizedTest
    @CsvSource({
        "insulated-conductor, annealed-conductor, 1, 1000, 1000, ''",
        "insulated-conductor, annealed-conductor, 1, 1000, 991, ''",
        "insulated-conductor, annealed-conductor, 1, 1000, 989, longer than what it was made from",
        "insulated-conductor, annealed-conductor, 1, 1000, 1201, not accounted for",
        "twisted-pair, insulated-conductor, 2, 1000, 1040, ''",
        "twisted-pair, insulated-conductor, 1, 1000, 1040, longer than what it was made from",
        "twisted-pair, insulated-conductor, 2, 1000, 1250, not accounted for",
        "core, twisted-pair, 4, 1000, 1010, ''",
        "core, twisted-pair, 4, 1000, 240, longer than what it was made from",
        "reel, jacketed-cable, 1, 305, 305, ''",
        "reel, jacketed-cable, 1, 305, 30.5, longer than what it was made from",
        "reel, jacket-compound, 1, 305, 1, ''"
    })
    void aLotIsNoLongerThanWhatRunsAlongIt(
            String kind, String parent, int parents, double metres, double each, String message) {
        LotInput[] inputs = new LotInput[parents];
        Stock[] stocks = new Stock[parents];
        for (int i = 0; i < parents; i++) {
            inputs[i] = input("P" + i, each, "m");
            stocks[i] = stock("P" + i, LotKind.named(parent), 1e5, "m", null);
        }
        List<Implausibility> found = LotChecks.implausible(
                lot(LotKind.named(kind), new Amount(metres, "m"), Map.of(), List.of(), inputs), stocks(stocks));
        if (message.isEmpty()) {
            assertEquals(List.of(), found);
        } else {
            assertTrue(only(found).contains(message), only(found));
        }
    }

    @Test
    void tellsOfCountersThatDisagree() {
        Stock cable = stock("JK", LotKind.JACKETED_CABLE, 1000, "m", null);
        Lot over = lot(LotKind.REEL, new Amount(1010, "m"), Map.of(), List.of(), input("JK", 1010, "m"));
        assertEquals(1, LotChecks.faults(over, stocks(cable), LotChecks.EXACT).size());
        assertEquals(List.of(), LotChecks.faults(over, stocks(cable), LotChecks.OF_COUNTERS));
        assertTrue(only(LotChecks.implausible(over, stocks(cable))).contains("1010 m is too much"));
        Lot farOver = lot(LotKind.REEL, new Amount(1021, "m"), Map.of(), List.of(), input("JK", 1021, "m"));
        assertEquals(
                "/inputs/0/quantity",
                LotChecks.faults(farOver, stocks(cable), LotChecks.OF_COUNTERS)
                        .get(0)
                        .where());
        LotInput placed = new LotInput(new LotId("JK"), new Amount(305, "m"), new Placement(0, 305, "m", 0, 400, "m"));
        assertTrue(only(LotChecks.implausible(
                        lot(LotKind.REEL, new Amount(305, "m"), Map.of(), List.of(), placed), stocks(cable)))
                .contains("the position says that 400 m"));
    }

    @Test
    void refusesPositionsThatLieOnNeither() {
        Stock cable = stock("JK", LotKind.JACKETED_CABLE, 1000, "m", null);
        for (Placement wrong : List.of(
                new Placement(0, 400, "m", 0, 305, "m"),
                new Placement(0, 305, "m", 900, 1205, "m"),
                new Placement(0, 305, "kg", 0, 305, "m"),
                new Placement(0, 305, "m", 0, 305, "kg"))) {
            Lot reel = lot(
                    LotKind.REEL,
                    new Amount(305, "m"),
                    Map.of(),
                    List.of(),
                    new LotInput(new LotId("JK"), new Amount(305, "m"), wrong));
            List<LotFault> faults = LotChecks.faults(reel, stocks(cable), LotChecks.OF_COUNTERS);
            assertEquals(
                    List.of("/inputs/0/position"),
                    faults.stream().map(LotFault::where).toList(),
                    wrong + "");
        }
    }

    private static Lot lot(
            LotKind kind, Amount quantity, Map<String, Setting> settings, List<Sample> samples, LotInput... inputs) {
        StepRun run = settings.isEmpty()
                ? null
                : new StepRun(new RunId("RUN"), null, null, null, null, null, null, null, settings);
        return new Lot(
                new LotId("LOT"), "north", kind, quantity, MORNING, null, null, Arrays.asList(inputs), run, samples);
    }

    private static LotInput input(String lot, double value, String unit) {
        return new LotInput(new LotId(lot), new Amount(value, unit));
    }

    private static Stock stock(String id, LotKind kind, double value, String unit, Double millimetres) {
        return new Stock(new LotId(id), kind, new Amount(value, unit), 0, MORNING, millimetres);
    }

    private static Map<LotId, Stock> stocks(Stock... stocks) {
        return Arrays.stream(stocks).collect(Collectors.toMap(Stock::id, Function.identity()));
    }
}
