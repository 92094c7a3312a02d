package dev.reelproof.api.seal;

import dev.reelproof.app.seal.KeepLog;
import dev.reelproof.app.seal.SealSettings;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Has the log go on: what was written gets its place every second, a head is signed every some minutes and when the service stops. */
@Singleton
class SealTimer {
    private static final Logger LOG = Logger.getLogger(SealTimer.class);
    private static final Duration LONGEST_LAST_STEP = Duration.ofSeconds(5);

    private final KeepLog log;
    private final SealSettings settings;
    private @Nullable ScheduledExecutorService clockwork;
    private volatile boolean stopped;

    SealTimer(KeepLog log, SealSettings settings) {
        this.log = log;
        this.settings = settings;
    }

    void start(@Observes StartupEvent event) {
        log.key();
        Duration every = settings.sequenceEvery();
        if (!(every.compareTo(Duration.ZERO) > 0)) {
            return;
        }
        ScheduledExecutorService started = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread thread = new Thread(work, "log");
            thread.setDaemon(true);
            return thread;
        });
        started.execute(() -> step(log::begin));
        Future<?> unusedAppending = started.scheduleWithFixedDelay(
                () -> step(log::append), every.toMillis(), every.toMillis(), TimeUnit.MILLISECONDS);
        long head = settings.headEvery().toMillis();
        Future<?> unusedSigning =
                started.scheduleWithFixedDelay(() -> step(log::signAll), head, head, TimeUnit.MILLISECONDS);
        clockwork = started;
    }

    /** What fails is tried again next time: nothing is lost, it only waits. */
    private void step(Runnable work) {
        try {
            work.run();
        } catch (RuntimeException e) {
            if (!stopped) {
                LOG.error("The log did not go on; it is tried again", e);
            }
        }
    }

    void stop(@Observes ShutdownEvent event) {
        ScheduledExecutorService running = clockwork;
        if (running == null) {
            return;
        }
        stopped = true;
        running.shutdownNow();
        try {
            if (running.awaitTermination(LONGEST_LAST_STEP.toSeconds(), TimeUnit.SECONDS)) {
                log.signAll();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException e) {
            LOG.warn("No last head was signed: the database was gone already. The next start signs it.");
        }
    }
}
