package dev.reelproof.api.lot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

class ReadAheadTest {
    private static final int MOST_THREADS = 2;
    private static final int FIRST_HANDFUL = 8;

    private final ReadAhead ahead = new ReadAhead(MOST_THREADS);

    @AfterEach
    void close() {
        ahead.close();
    }

    @Test
    void makesNoMoreThreadsThanItMayAndFinishesHoweverManyRunAtOnce() throws Exception {
        int searches = 20;
        int found = 2_500;
        CountDownLatch begun = new CountDownLatch(searches);
        Set<Thread> ahead = ConcurrentHashMap.newKeySet();
        ExecutorService callers = Executors.newFixedThreadPool(searches);
        try {
            List<Future<Integer>> answers = new ArrayList<>();
            for (int i = 0; i < searches; i++) {
                answers.add(callers.submit(() -> {
                    Thread caller = Thread.currentThread();
                    AtomicInteger written = new AtomicInteger();
                    this.ahead.run(next -> {
                        if (Thread.currentThread() != caller) {
                            ahead.add(Thread.currentThread());
                        }
                        // None goes on before all have begun: a search that waited for a thread would hold up the
                        // others.
                        begun.countDown();
                        await(begun);
                        for (int n = 0; n < found; n++) {
                            next.accept(written::incrementAndGet);
                        }
                    });
                    return written.get();
                }));
            }
            for (Future<Integer> answer : answers) {
                assertEquals(found, answer.get(30, TimeUnit.SECONDS));
            }
            assertEquals(MOST_THREADS, ahead.size());
        } finally {
            callers.shutdownNow();
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            assertTrue(latch.await(30, TimeUnit.SECONDS), "not all searches began");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    @Test
    void tellsThatASearchFailedThatFoundNoThread() {
        RuntimeException failure = new IllegalStateException("the database is gone");
        ReadAhead one = new ReadAhead(1);
        AtomicInteger done = new AtomicInteger();
        CountDownLatch answered = new CountDownLatch(1);
        try {
            // The only thread searches until the second search, which finds none, is over.
            one.run(next -> {
                next.accept(() -> assertSame(
                        failure,
                        assertThrows(
                                IllegalStateException.class,
                                () -> one.run(second -> {
                                    second.accept(done::incrementAndGet);
                                    throw failure;
                                }))));
                next.accept(answered::countDown);
                for (int i = 0; i < FIRST_HANDFUL; i++) {
                    next.accept(() -> {});
                }
                await(answered);
            });
        } finally {
            one.close();
        }
        assertEquals(1, done.get());
    }

    @Test
    void keepsTheOrderAndDoesAllInTheCallersThread() {
        for (int count : new int[] {0, 1, 8, 9, 999, 25_000}) {
            List<Integer> done = new ArrayList<>();
            Thread caller = Thread.currentThread();
            ahead.run(next -> {
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
                        () -> ahead.run(next -> {
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
                        () -> ahead.run(next -> {
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
