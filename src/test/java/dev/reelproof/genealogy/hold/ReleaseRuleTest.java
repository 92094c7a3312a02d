package dev.reelproof.genealogy.hold;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.hold.ReleaseRefusedException.Reason;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReleaseRuleTest {
    private static final OffsetDateTime NINE = OffsetDateTime.parse("2026-02-11T09:00:00Z");
    private static final Hold OF_LOT = hold(HoldTarget.ofLot(new LotId("IC-1")));
    private static final Hold.Range RANGE = new Hold.Range(0, 1, "km");
    private static final Optional<Amount> TWO_KILOMETRES = Optional.of(new Amount(2, "km"));

    private static Hold hold(HoldTarget target) {
        return new Hold(17, target, "bare spots", "anna", "person", NINE, List.of());
    }

    private static Hold.Release release(Hold.Range range) {
        return new Hold.Release(range, "looked at", "ben", NINE.plusDays(1));
    }

    private static String refusal(Reason reason, Executable attempt) {
        ReleaseRefusedException refusal = assertThrows(ReleaseRefusedException.class, attempt);
        assertEquals(reason, refusal.reason());
        return refusal.getMessage();
    }

    @Test
    void anotherPersonReleasesAnOpenHold() {
        assertDoesNotThrow(() -> ReleaseRule.requireMayRelease(OF_LOT, false, true));
        assertDoesNotThrow(() -> ReleaseRule.requireMayRelease(OF_LOT.with(release(RANGE)), false, true));
    }

    /** Whoever placed it is told so first, be it a person or a program. */
    @ParameterizedTest
    @CsvSource({"true, true, OWN_HOLD", "true, false, OWN_HOLD", "false, false, NO_PERSON"})
    void neitherTheHolderNorAProgramReleases(boolean isHolder, boolean isPerson, Reason reason) {
        refusal(reason, () -> ReleaseRule.requireMayRelease(OF_LOT, isHolder, isPerson));
    }

    @ParameterizedTest
    @CsvSource({"true, true", "true, false", "false, true", "false, false"})
    void nobodyReleasesTwice(boolean isHolder, boolean isPerson) {
        Hold released = OF_LOT.with(release(RANGE)).with(release(null));
        assertFalse(released.isOpen());
        assertEquals(
                "Hold 17 was released by ben on 2026-02-12; place a new hold if it must be held again.",
                refusal(Reason.RELEASED_BEFORE, () -> ReleaseRule.requireMayRelease(released, isHolder, isPerson)));
    }

    @Test
    void aRangeLiesOnTheHeldLot() {
        assertDoesNotThrow(() -> ReleaseRule.requireOnHeld(OF_LOT, RANGE, TWO_KILOMETRES));
        assertDoesNotThrow(() -> ReleaseRule.requireOnHeld(OF_LOT, new Hold.Range(0, 2000, "m"), TWO_KILOMETRES));
        assertDoesNotThrow(() -> ReleaseRule.requireOnHeld(
                hold(HoldTarget.ofReel(new LotId("R-1"))),
                new Hold.Range(0, 305, "m"),
                Optional.of(new Amount(305, "m"))));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"0 | 2001 | m | ends at", "0 | 1 | kg | measured as", "1.9 | 2.1 | km | ends at"})
    void aRangeElsewhereIsRefused(double from, double to, String unit, String words) {
        String message = refusal(
                Reason.NOT_ON_HELD,
                () -> ReleaseRule.requireOnHeld(OF_LOT, new Hold.Range(from, to, unit), TWO_KILOMETRES));
        assertTrue(message.contains(words), message);
    }

    @Test
    void aRunAndAMachineHaveNoLength() {
        for (HoldTarget target :
                List.of(HoldTarget.ofRun(new RunId("RUN-1")), HoldTarget.ofMachine("INS-2", NINE, NINE.plusHours(1)))) {
            String message =
                    refusal(Reason.NOT_ON_HELD, () -> ReleaseRule.requireOnHeld(hold(target), RANGE, TWO_KILOMETRES));
            assertTrue(message.contains("release the hold whole"), message);
        }
    }

    @Test
    void whatIsNotRegisteredHasNoKnownLength() {
        String message = refusal(Reason.NOT_ON_HELD, () -> ReleaseRule.requireOnHeld(OF_LOT, RANGE, Optional.empty()));
        assertTrue(message.contains("not known yet"), message);
    }
}
