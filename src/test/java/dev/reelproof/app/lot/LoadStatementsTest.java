package dev.reelproof.app.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.genealogy.Amount;
import dev.reelproof.genealogy.Lot;
import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotInput;
import dev.reelproof.genealogy.LotKind;
import dev.reelproof.genealogy.Placement;
import dev.reelproof.genealogy.RunId;
import dev.reelproof.genealogy.Sample;
import dev.reelproof.genealogy.StepRun;
import dev.reelproof.genealogy.admission.AdmissionTerms;
import dev.reelproof.genealogy.admission.LotOutcome;
import dev.reelproof.genealogy.admission.LotReport;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;
import org.hibernate.SessionFactory;
import org.hibernate.stat.Statistics;
import org.junit.jupiter.api.Test;

/** A batch is a few statements for all its lots, never one a lot. */
@QuarkusTest
class LoadStatementsTest {
    private static final OffsetDateTime MORNING = OffsetDateTime.parse("2026-02-11T09:00:00Z");

    @Inject
    AdmitLots admit;

    @Inject
    SessionFactory sessions;

    private final String own = "-" + UUID.randomUUID().toString().substring(0, 8);

    private LotReport report(String id, String parent, int ordinal) {
        StepRun run = new StepRun(new RunId(id + own), "stranding", "STR-1", null, null, null, null, null, Map.of());
        return new LotReport(
                new Lot(
                        new LotId(id + own),
                        "north",
                        LotKind.UNIT,
                        new Amount(1, "m"),
                        MORNING,
                        run.step(),
                        run.machine(),
                        parent == null
                                ? List.of()
                                : List.of(new LotInput(
                                        new LotId(parent + own),
                                        new Amount(1, "m"),
                                        new Placement(0, 1, "m", ordinal, ordinal + 1, "m"))),
                        run,
                        List.of(new Sample("diameter", 1, "mm", null, null, null))),
                "0".repeat(64));
    }

    private LotReport wire(String id) {
        return new LotReport(
                new Lot(
                        new LotId(id + own),
                        "north",
                        LotKind.ANNEALED_CONDUCTOR,
                        new Amount(10, "km"),
                        MORNING,
                        null,
                        null,
                        List.of()),
                "0".repeat(64));
    }

    private long statements(List<LotReport> reports) {
        Statistics statistics = sessions.getStatistics();
        boolean wereOn = statistics.isStatisticsEnabled();
        statistics.setStatisticsEnabled(true);
        try {
            long before = statistics.getPrepareStatementCount();
            AdmitLots.Admission admission = admit.many("north", reports, AdmissionTerms.IN_BULK, MORNING);
            long count = statistics.getPrepareStatementCount() - before;
            assertTrue(
                    admission.outcomes().stream()
                            .allMatch(outcome -> outcome.fate() == LotOutcome.Fate.REGISTERED
                                    || outcome.fate() == LotOutcome.Fate.WAITING),
                    () -> admission.outcomes().toString());
            return count;
        } finally {
            statistics.setStatisticsEnabled(wereOn);
        }
    }

    private List<LotReport> batch(String prefix, int lots) {
        String parent = prefix + "wire";
        statements(List.of(wire(parent)));
        List<LotReport> reports = new ArrayList<>();
        for (int i = 0; i < lots; i++) {
            reports.add(report(prefix + i, parent, i));
            reports.add(report(prefix + "late" + i, prefix + "never", i));
        }
        return reports;
    }

    /** The log of the plant is written beside it, now and then, and its statements are counted too. */
    private long leastOfThree(String prefix, int lots) {
        return IntStream.range(0, 3)
                .mapToLong(turn -> statements(batch(prefix + turn, lots)))
                .min()
                .orElseThrow();
    }

    @Test
    void isAsManyForAThousandLotsAsForTwo() {
        long few = leastOfThree("few", 1);
        assertEquals(few, leastOfThree("many", 500));
        // lock; five reads of what is known; runs, lots, inputs, samples; a plan and a look for overlaps; the circle of
        // those
        // that wait; two of the queue; two audit entries; the end of the wait
        assertTrue(few > 10 && few < 30, "statements " + few);
    }
}
