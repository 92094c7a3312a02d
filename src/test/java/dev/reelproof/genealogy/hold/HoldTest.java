package dev.reelproof.genealogy.hold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.Stretch;
import dev.reelproof.genealogy.hold.HoldTarget.What;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class HoldTest {
    private static final OffsetDateTime NINE = OffsetDateTime.parse("2026-02-11T09:00:00Z");

    private static Hold hold(Hold.Range... releases) {
        return new Hold(
                17,
                HoldTarget.ofLot(new LotId("IC-1")),
                "bare spots",
                "anna",
                "person",
                NINE,
                Arrays.stream(releases)
                        .map(range -> new Hold.Release(range, "looked at", "ben", NINE.plusDays(1)))
                        .toList());
    }

    @Test
    void isOpenUntilItIsReleasedWhole() {
        Hold.Range range = new Hold.Range(0, 1, "km");
        assertTrue(hold().isOpen());
        assertTrue(hold(range, new Hold.Range(500, 2000, "m")).isOpen());
        assertFalse(hold(range, (Hold.Range) null).isOpen());
        assertFalse(hold((Hold.Range) null).isOpen());
        assertEquals(List.of(), hold().releasedStretches());
        assertEquals(
                List.of(new Stretch(0, 2000)),
                hold(range, new Hold.Range(500, 2000, "m")).releasedStretches());
        assertEquals("hold 17 of lot IC-1, placed by anna on 2026-02-11: bare spots", hold().inWords());
    }

    @Test
    void namesAMachineWithItsTimeInUtc() {
        HoldTarget target =
                HoldTarget.ofMachine("INS 2", OffsetDateTime.parse("2026-02-11T10:00:00+01:00"), NINE.plusNanos(1_500));
        assertEquals(NINE, target.from());
        assertEquals(NINE.plusNanos(1_000), target.to());
        assertEquals("machine INS 2 from 2026-02-11T09:00Z to 2026-02-11T09:00:00.000001Z", target.toString());
        assertFalse(target.hasLength());
        refused("before it begins", What.MACHINE, "INS 2", NINE, NINE.minusSeconds(1));
        refused("from when to when", What.MACHINE, "INS 2", NINE, null);
        refused("from when to when", What.MACHINE, null, NINE, NINE);
        refused("control character", What.MACHINE, "INS\n2", NINE, NINE);
        refused("between the years", What.MACHINE, "INS", OffsetDateTime.parse("1776-07-04T09:00:00Z"), NINE);
    }

    @ParameterizedTest
    @EnumSource(names = "MACHINE", mode = EnumSource.Mode.EXCLUDE)
    void holdsAllElseWhole(What what) {
        HoldTarget target = new HoldTarget(What.named(what.word()), "X-1", null, null);
        assertEquals(what.word() + " X-1", target.toString());
        assertEquals(what != What.RUN, target.hasLength());
        refused("only a machine", what, "X-1", NINE, NINE);
        refused("cannot identify", what, "no identifier", null, null);
    }

    @Test
    void knowsNothingElse() {
        assertThrows(IllegalArgumentException.class, () -> What.named("operator"));
    }

    private static void refused(String words, What what, String name, OffsetDateTime from, OffsetDateTime to) {
        IllegalArgumentException refusal =
                assertThrows(IllegalArgumentException.class, () -> new HoldTarget(what, name, from, to));
        assertTrue(refusal.getMessage().contains(words), refusal.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"5, 5, m", "6, 5, m", "-1, 5, m", "0, Infinity, m", "NaN, 5, m", "0, NaN, m", "0, 5, ohm"})
    void aRangeHasALength(double from, double to, String unit) {
        assertThrows(IllegalArgumentException.class, () -> new Hold.Range(from, to, unit));
    }

    @Test
    void aRangeLiesOnWhatIsHeld() {
        Amount kilometre = new Amount(1, "km");
        new Hold.Range(0, 1000, "m").requireOn("lot L", kilometre);
        new Hold.Range(0, 3.28083989501312336, "kft").requireOn("lot L", kilometre);
        assertThrows(IllegalArgumentException.class, () -> new Hold.Range(0, 1001, "m").requireOn("lot L", kilometre));
        assertThrows(IllegalArgumentException.class, () -> new Hold.Range(0, 1, "kg").requireOn("lot L", kilometre));
    }

    @Test
    void aRangeIsGivenInOneUnit() {
        assertEquals("km", Hold.Range.oneUnit("km", "km"));
        IllegalArgumentException refusal =
                assertThrows(IllegalArgumentException.class, () -> Hold.Range.oneUnit("m", "km"));
        assertEquals("is in km, and 'from' in m; give both ends of a range in one unit", refusal.getMessage());
    }
}
