package dev.reelproof.analysis;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

/**
 * The final tests of the reels of a {@link SimulatedPlant}, from a seed: in the order in which the reels were made, on the working days of
 * one week after the other, in one of three bays with an instrument of its own, by technicians who go from bay to bay.
 */
final class SimulatedTests {
    private static final LocalDate FIRST_DAY = LocalDate.of(2026, 1, 5);
    private static final int DAYS_OF_A_WEEK = 5;
    private static final int BAYS = 3;
    private static final int TECHNICIANS = 6;

    private final List<TestOccasion> occasions = new ArrayList<>();
    private final int reelsOfADay;

    SimulatedTests(long seed, int reels, int reelsOfADay) {
        this.reelsOfADay = reelsOfADay;
        Random random = new Random(seed * 31 + 7);
        for (int reel = 0; reel < reels; reel++) {
            int bay = 1 + random.nextInt(BAYS);
            int day = reel / reelsOfADay;
            OffsetDateTime finished = FIRST_DAY
                    .plusWeeks(day / DAYS_OF_A_WEEK)
                    .plusDays(day % DAYS_OF_A_WEEK)
                    .atTime(8, 0)
                    .atOffset(ZoneOffset.UTC);
            occasions.add(new TestOccasion(
                    "bay-" + bay, "technician-" + random.nextInt(TECHNICIANS), Set.of("analyser-" + bay), finished));
        }
    }

    /** What each reel met, its test included. */
    List<Set<Exposure>> with(List<Set<Exposure>> upstream) {
        List<Set<Exposure>> met = new ArrayList<>();
        for (int reel = 0; reel < upstream.size(); reel++) {
            Set<Exposure> all = new LinkedHashSet<>(upstream.get(reel));
            all.addAll(occasions.get(reel).exposures());
            met.add(all);
        }
        return met;
    }

    List<LocalDate> weeks() {
        return occasions.stream().map(TestOccasion::week).toList();
    }

    /** The number of the week of a reel, from 0. */
    int week(int reel) {
        return reel / reelsOfADay / DAYS_OF_A_WEEK;
    }
}
