package dev.reelproof.app.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.admission.LotOutcome;
import dev.reelproof.store.lot.Lots;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;

/** Reports by themselves, several at the same time. */
@QuarkusTest
class RegisterLotTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");
    private static final int ROUNDS = 20;

    @Inject
    RegisterForTests registration;

    @Inject
    Lots lots;

    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    @Test
    void letsOnlyOneOfTwoTakeTheLastOfALotAtTheSameTime() throws Exception {
        for (int round = 0; round < ROUNDS; round++) {
            String parent = "AC" + round;
            register(lot(parent));
            Lot first = lot("IC-a" + round, input(parent, 600));
            Lot second = lot("IC-b" + round, input(parent, 600));
            assertEquals(1, atOnce(() -> registered(first), () -> registered(second)), "round " + round);
        }
    }

    @Test
    void registersOnceWhatIsSentTwiceAtTheSameTime() throws Exception {
        for (int round = 0; round < ROUNDS; round++) {
            Lot same = lot("PE" + round);
            assertEquals(1, atOnce(() -> register(same), () -> register(same)), "round " + round);
        }
    }

    @Test
    void doesNotBlockItselfWhenTwoTakeFromTheSameParentsInOppositeOrder() throws Exception {
        for (int round = 0; round < ROUNDS; round++) {
            String one = "A" + round;
            String other = "B" + round;
            register(lot(one));
            register(lot(other));
            Lot first = lot("C" + round, input(one, 500), input(other, 500));
            Lot second = lot("D" + round, input(other, 500), input(one, 500));
            assertEquals(2, atOnce(() -> register(first), () -> register(second)), "round " + round);
        }
    }

    @Test
    void keepsPlantsApart() {
        register(lot("A"));
        assertFalse(lots.byId("south", id("A")).isPresent());
        Lot elsewhere = new Lot(
                id("B"), "south", LotKind.UNIT, new Amount(1, "km"), MORNING, null, null, List.of(input("A", 1)));
        assertEquals(LotOutcome.Fate.REFUSED, take(elsewhere).fate());
    }

    /** How many of two, started at the same time, answer true. */
    @SafeVarargs
    private static int atOnce(Callable<Boolean>... deeds) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(deeds.length);
        try {
            CyclicBarrier start = new CyclicBarrier(deeds.length);
            List<Future<Boolean>> answers = new ArrayList<>();
            for (Callable<Boolean> deed : deeds) {
                answers.add(threads.submit(() -> {
                    start.await();
                    return deed.call();
                }));
            }
            int count = 0;
            for (Future<Boolean> answer : answers) {
                count += answer.get(30, TimeUnit.SECONDS) ? 1 : 0;
            }
            return count;
        } finally {
            threads.shutdownNow();
        }
    }

    private LotOutcome take(Lot lot) {
        return registration.take(lot);
    }

    private boolean register(Lot lot) {
        LotOutcome outcome = take(lot);
        assertEquals(List.of(), outcome.faults());
        return outcome.fate() == LotOutcome.Fate.REGISTERED;
    }

    private boolean registered(Lot lot) {
        LotOutcome outcome = take(lot);
        if (outcome.fate() != LotOutcome.Fate.REGISTERED) {
            assertEquals("/inputs/0/quantity", outcome.faults().get(0).where());
        }
        return outcome.fate() == LotOutcome.Fate.REGISTERED;
    }

    private LotId id(String name) {
        return new LotId(name + own);
    }

    private LotInput input(String parent, double metres) {
        return new LotInput(id(parent), new Amount(metres, "m"));
    }

    private Lot lot(String name, LotInput... inputs) {
        return new Lot(id(name), "north", LotKind.UNIT, new Amount(1, "km"), MORNING, null, null, List.of(inputs));
    }
}
