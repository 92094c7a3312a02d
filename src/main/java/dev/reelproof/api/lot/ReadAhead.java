package dev.reelproof.api.lot;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Has what is found written while more is being found: on one core the database looks for the next rows, on another the rows before
 * become text. However much is found, no more than {@value #MOST_WAITING} handfuls of {@value #HANDFUL} wait.
 *
 * <p>At most {@value #MOST_THREADS} searches run ahead at a time. The next one runs in the thread that writes its answer, row by row:
 * it waits for nobody, and costs no thread.
 */
@ApplicationScoped
class ReadAhead {
    private static final int MOST_THREADS = 8;
    private static final long IDLE_SECONDS = 30;

    private static final int FIRST_HANDFUL = 8;
    private static final int HANDFUL = 1_000;
    private static final int MOST_WAITING = 3;
    private static final long PATIENCE_MILLIS = 100;

    // Not the pool that answers requests: when each of its threads waited for another one, none would come.
    private final ThreadPoolExecutor threads;

    ReadAhead() {
        this(MOST_THREADS);
    }

    /** @param most how many searches may run ahead at a time */
    ReadAhead(int most) {
        AtomicInteger made = new AtomicInteger();
        // Nothing is queued: who finds no thread free searches in its own.
        threads = new ThreadPoolExecutor(0, most, IDLE_SECONDS, TimeUnit.SECONDS, new SynchronousQueue<>(), search -> {
            Thread thread = new Thread(search, "reads-ahead-" + made.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        });
    }

    @PreDestroy
    void close() {
        threads.shutdownNow();
    }

    /**
     * Runs a search, in another thread where one is free, and what it gives in this one, in the same order.
     *
     * @param search gives what is to be done for each thing found
     * @throws RuntimeException what the search, or what it gave, threw; the search has ended or ends at the next thing that it finds
     */
    void run(Consumer<Consumer<Runnable>> search) {
        Search ahead = new Search();
        try {
            threads.execute(() -> ahead.find(search));
        } catch (RejectedExecutionException e) {
            search.accept(Runnable::run);
            return;
        }
        try {
            ahead.write();
        } finally {
            ahead.isGivenUp = true;
        }
    }

    /** A search that runs ahead of its answer. */
    private static final class Search {
        private final BlockingQueue<List<Runnable>> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
        private List<Runnable> handful = new ArrayList<>();
        private int size = FIRST_HANDFUL;
        private volatile boolean isGivenUp;
        private volatile @Nullable RuntimeException failure;

        void find(Consumer<Consumer<Runnable>> search) {
            try {
                search.accept(this::add);
                if (!handful.isEmpty()) {
                    pass();
                }
            } catch (RuntimeException e) {
                failure = e;
            } catch (Error e) {
                failure = new IllegalStateException("reading ahead failed", e);
                throw e;
            } finally {
                handful = List.of();
                passEnd();
            }
        }

        private void add(Runnable next) {
            handful.add(next);
            if (handful.size() == size) {
                pass();
                size = Math.min(2 * size, HANDFUL);
            }
        }

        private void passEnd() {
            try {
                pass();
            } catch (CancellationException e) {
                // Nobody waits for the end.
            }
        }

        private void pass() {
            try {
                while (!waiting.offer(handful, PATIENCE_MILLIS, TimeUnit.MILLISECONDS)) {
                    if (isGivenUp) {
                        throw new CancellationException("nobody reads the answer any more");
                    }
                }
                handful = new ArrayList<>(HANDFUL);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new CancellationException("interrupted");
            }
        }

        void write() {
            try {
                for (List<Runnable> next = waiting.take(); !next.isEmpty(); next = waiting.take()) {
                    next.forEach(Runnable::run);
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException("interrupted while an answer was written", e);
            }
            if (failure != null) {
                throw failure;
            }
        }
    }
}
