package dev.reelproof.genealogy.admission;

import static org.junit.jupiter.api.Assertions.assertEquals;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotFault;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class LotChecksTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");
    private static final Stock WIRE = stock("AC-1", 42_000, "m", 0);
    private static final Stock COMPOUND = stock("PE-1", 1_000, "kg", 0);

    @Test
    void takesALotMadeFromWhatThereIs() {
        assertEquals(List.of(), faults(lot(input("AC-1", 42, "km"), input("PE-1", 1, "t")), WIRE, COMPOUND));
    }

    @Test
    void takesMaterialWithoutInputs() {
        assertEquals(List.of(), faults(lot()));
    }

    @Test
    void refusesAnUnknownParent() {
        assertEquals(
                List.of(new LotFault("/inputs/1/lot", "unknown lot PE-9; register it before what is made from it")),
                faults(lot(input("AC-1", 1, "m"), input("PE-9", 1, "kg")), WIRE, COMPOUND));
    }

    @Test
    void refusesALotThatGoesIntoItself() {
        assertEquals(
                List.of(new LotFault("/inputs/0/lot", "lot IC-1 cannot go into itself")),
                faults(lot(input("IC-1", 1, "m"))));
    }

    @Test
    void refusesAParentListedTwiceEvenWhereBothTogetherAreThere() {
        assertEquals(
                List.of(new LotFault("/inputs/1/lot", "lot AC-1 is listed twice; give it once, with the sum of both")),
                faults(lot(input("AC-1", 1, "m"), input("AC-1", 2, "m")), WIRE));
    }

    @Test
    void refusesMoreThanTheParentHad() {
        assertEquals(
                List.of(new LotFault(
                        "/inputs/0/quantity", "lot AC-1 had 42000 m, of which 42000 m are left; 43 km is too much")),
                faults(lot(input("AC-1", 43, "km")), WIRE));
    }

    @Test
    void countsWhatOtherChildrenTook() {
        Stock started = stock("AC-1", 42, "km", 40_000);
        assertEquals(List.of(), faults(lot(input("AC-1", 2_000, "m")), started));
        assertEquals(
                List.of(new LotFault(
                        "/inputs/0/quantity", "lot AC-1 had 42 km, of which 2 km are left; 2001 m is too much")),
                faults(lot(input("AC-1", 2_001, "m")), started));
    }

    @Test
    void forgivesRoundingOnly() {
        Stock started = stock("AC-1", 42_000, "m", 30_000);
        // the tolerance is 42 000 m times 1e-9, 42 µm
        assertEquals(List.of(), faults(lot(input("AC-1", 12_000.000_041, "m")), started));
        assertEquals(
                "/inputs/0/quantity",
                faults(lot(input("AC-1", 12_000.000_043, "m")), started).get(0).where());
    }

    @Test
    void takesTheWholeOfALotMeasuredInFeetInThreeParts() {
        Stock feet = stock("AC-1", 3, "kft", new Amount(1_000, "ft").base() + new Amount(1, "kft").base());
        assertEquals(List.of(), faults(lot(input("AC-1", 304.8, "m")), feet));
    }

    @Test
    void refusesAMassOfALotMeasuredByLengthAndTheReverse() {
        assertEquals(
                List.of(
                        new LotFault(
                                "/inputs/0/quantity",
                                "lot AC-1 is measured as length (42000 m); what goes in of it cannot be given as mass (12 kg)"),
                        new LotFault(
                                "/inputs/1/quantity",
                                "lot PE-1 is measured as mass (1000 kg); what goes in of it cannot be given as length (7 m)")),
                faults(lot(input("AC-1", 12, "kg"), input("PE-1", 7, "m")), WIRE, COMPOUND));
    }

    @Test
    void refusesALotMadeBeforeItsParent() {
        Stock later = new Stock(
                new LotId("AC-1"), LotKind.ANNEALED_CONDUCTOR, new Amount(1, "km"), 0, MORNING.plusSeconds(1), null);
        assertEquals(
                List.of(
                        new LotFault(
                                "/inputs/0/lot",
                                "lot AC-1 was made at 2026-02-11T09:00:01Z, after this one (2026-02-11T09:00Z); a lot is made after what goes into it")),
                faults(lot(input("AC-1", 1, "m")), later));
    }

    @Test
    void tellsAllFaultsAtOnce() {
        assertEquals(
                List.of("/inputs/0/lot", "/inputs/1/quantity", "/inputs/2/lot"),
                faults(lot(input("X", 1, "m"), input("PE-1", 2, "t"), input("IC-1", 1, "m")), COMPOUND).stream()
                        .map(LotFault::where)
                        .toList());
    }

    private static Stock stock(String id, double value, String unit, double taken) {
        return new Stock(new LotId(id), LotKind.ANNEALED_CONDUCTOR, new Amount(value, unit), taken, MORNING, null);
    }

    private static LotInput input(String id, double value, String unit) {
        return new LotInput(new LotId(id), new Amount(value, unit));
    }

    private static Lot lot(LotInput... inputs) {
        return new Lot(
                new LotId("IC-1"),
                "north",
                LotKind.INSULATED_CONDUCTOR,
                new Amount(42_000, "m"),
                MORNING,
                "insulating",
                "INS-2",
                List.of(inputs));
    }

    private static Map<LotId, Stock> byId(Stock... stocks) {
        return Arrays.stream(stocks).collect(Collectors.toMap(Stock::id, Function.identity()));
    }

    private static List<LotFault> faults(Lot lot, Stock... stocks) {
        return LotChecks.faults(lot, byId(stocks), LotChecks.EXACT);
    }
}
