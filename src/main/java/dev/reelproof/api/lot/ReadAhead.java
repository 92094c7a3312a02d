package dev.reelproof.api.lot;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CancellationException;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Has what is found written while more is being found: on one core the database looks for the next rows, on another the rows before
 * become text. However much is found, no more than {@value #MOST_WAITING} handfuls of {@value #HANDFUL} wait.
 */
final class ReadAhead {
    private static final int FIRST_HANDFUL = 8;
    private static final int HANDFUL = 1_000;
    private static final int MOST_WAITING = 3;
    private static final long PATIENCE_MILLIS = 100;

    private final BlockingQueue<List<Runnable>> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private List<Runnable> handful = new ArrayList<>();
    private int size = FIRST_HANDFUL;
    private volatile boolean isGivenUp;
    private volatile RuntimeException failure;

    private ReadAhead() {}

    /**
     * Runs a search in a thread of its own, and what it gives in this one, in the same order.
     *
     * @param search gives what is to be done for each thing found
     * @throws RuntimeException what the search, or what it gave, threw; the search has ended or ends at the next thing that it finds
     */
    static void run(Consumer<Consumer<Runnable>> search) {
        ReadAhead ahead = new ReadAhead();
        // Not from the pool that answers requests: when each of its threads waited for another one, none would come.
        Thread thread =
                new Thread(() -> ahead.find(search), Thread.currentThread().getName() + " reads ahead");
        thread.setDaemon(true);
        thread.start();
        try {
            ahead.write();
        } finally {
            ahead.isGivenUp = true;
        }
    }

    private void find(Consumer<Consumer<Runnable>> search) {
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

    private void write() {
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
