package dev.reelproof.api.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class ReadAheadTest {
    @Test
    void keepsTheOrderAndDoesAllInTheCallersThread() {
        for (int count : new int[] {0, 1, 8, 9, 999, 25_000}) {
            List<Integer> done = new ArrayList<>();
            Thread caller = Thread.currentThread();
            ReadAhead.run(next -> {
                for (int i = 0; i < count; i++) {
                    int number = i;
                    next.accept(() -> {
                        assertSame(caller, Thread.currentThread());
                        done.add(number);
                    });
                }
            });
            assertEquals(count, done.size());
            for (int i = 0; i < count; i++) {
                assertEquals(i, done.get(i));
            }
        }
    }

    @Test
    void tellsThatTheSearchFailed() {
        RuntimeException failure = new IllegalStateException("the database is gone");
        AtomicInteger done = new AtomicInteger();
        assertSame(
                failure,
                assertThrows(
                        IllegalStateException.class,
                        () -> ReadAhead.run(next -> {
                            for (int i = 0; i < 1_500; i++) {
                                next.accept(done::incrementAndGet);
                            }
                            throw failure;
                        })));
        assertTrue(done.get() >= 8 && done.get() < 1_500, "done " + done);
    }

    @Test
    void endsTheSearchWhenNobodyReadsAnyMore() throws InterruptedException {
        CountDownLatch ended = new CountDownLatch(1);
        RuntimeException gone = new IllegalStateException("the caller is gone");
        AtomicInteger found = new AtomicInteger();
        assertSame(
                gone,
                assertThrows(
                        IllegalStateException.class,
                        () -> ReadAhead.run(next -> {
                            try {
                                while (true) {
                                    found.incrementAndGet();
                                    next.accept(() -> {
                                        throw gone;
                                    });
                                }
                            } finally {
                                ended.countDown();
                            }
                        })));
        assertTrue(ended.await(30, TimeUnit.SECONDS));
        assertTrue(found.get() <= 6_000, "found " + found);
    }
}
