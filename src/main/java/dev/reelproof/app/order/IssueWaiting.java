package dev.reelproof.app.order;

import dev.reelproof.access.Callers;
import dev.reelproof.access.PermissionDeniedException;
import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.certificate.CannotBeSignedException;
import dev.reelproof.app.certificate.IssueCertificate;
import dev.reelproof.app.certificate.IssueCertificate.Issued;
import dev.reelproof.app.hold.HeldException;
import dev.reelproof.store.order.CertificateBatches;
import dev.reelproof.store.order.CertificateBatches.Outcome;
import dev.reelproof.store.order.CertificateBatches.Task;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Issues the certificates that wait in batches, one after the other.
 *
 * <p>One transaction locks a reel's row and waits; meanwhile the use case issues the certificate in transactions of its own; then the
 * first one writes down what came of it. Several copies of the service share the work, row by row. A copy that dies lets its row go,
 * and another asks for that certificate again, which gives the one that was issued, if it was.
 */
@Singleton
public class IssueWaiting {
    private static final Logger LOG = Logger.getLogger(IssueWaiting.class);

    /** What another copy left is taken up so often. */
    private static final long LOOK_SECONDS = 5;

    private final CertificateBatches batches;
    private final IssueCertificate issuing;
    private final Callers callers;
    private final Clock clock;
    private final ScheduledExecutorService worker = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread thread = new Thread(work, "issues-certificates");
        thread.setDaemon(true);
        return thread;
    });

    private volatile boolean isStopping;
    private volatile @Nullable Future<?> looking;

    IssueWaiting(CertificateBatches batches, IssueCertificate issuing, Callers callers, Clock clock) {
        this.batches = batches;
        this.issuing = issuing;
        this.callers = callers;
        this.clock = clock;
    }

    void start(@Observes StartupEvent event) {
        looking = worker.scheduleWithFixedDelay(this::issueAll, LOOK_SECONDS, LOOK_SECONDS, TimeUnit.SECONDS);
    }

    void stop(@Observes ShutdownEvent event) throws InterruptedException {
        isStopping = true;
        Future<?> look = looking;
        if (look != null) {
            look.cancel(false);
        }
        worker.shutdown();
        if (!worker.awaitTermination(LOOK_SECONDS, TimeUnit.SECONDS)) {
            worker.shutdownNow();
        }
    }

    /** Has what waits issued now. */
    void wake() {
        try {
            worker.execute(this::issueAll);
        } catch (RejectedExecutionException e) {
            // This copy is stopping: another, or this one after its restart, takes it up.
            LOG.debug("not woken while stopping");
        }
    }

    /** Issues what waits, until nothing does. */
    void issueAll() {
        try {
            while (!isStopping && issueNext()) {
                LOG.trace("one more");
            }
        } catch (RuntimeException e) {
            LOG.error("certificates that wait could not be looked for; tried again in " + LOOK_SECONDS + " s", e);
        }
    }

    /** Issues the next certificate that waits and that nobody works on; false when there is none. */
    boolean issueNext() {
        return QuarkusTransaction.requiringNew().call(() -> {
            Optional<Task> task = batches.takeNext();
            task.ifPresent(this::issue);
            return task.isPresent();
        });
    }

    private void issue(Task task) {
        // What is thrown out of a suspended transaction comes wrapped: whoever throws is asked inside.
        Came came = QuarkusTransaction.suspendingExisting()
                .call(() -> callers.onBehalfOf(task.caller(), () -> tryToIssue(task)));
        batches.done(task, came.outcome(), came.certificate(), came.reason(), OffsetDateTime.now(clock));
    }

    /** What came of a reel: a certificate's number, or the reason why there is none. */
    private record Came(Outcome outcome, @Nullable String certificate, @Nullable String reason) {
        static Came issued(Task task, Issued issued) {
            // It may be issued by this batch, though the copy that did it died before it could write it down.
            boolean isNew = issued.first() || !issued.certificate().issued().isBefore(task.asked());
            return new Came(
                    isNew ? Outcome.ISSUED : Outcome.ISSUED_BEFORE,
                    issued.certificate().number(),
                    null);
        }

        static Came notIssued(@Nullable String reason) {
            return new Came(
                    Outcome.NOT_ISSUED,
                    null,
                    Objects.requireNonNull(reason, "an exception of ours says what is wrong"));
        }
    }

    private Came tryToIssue(Task task) {
        try {
            return Came.issued(task, issuing.issue(task.plant(), task.reel()));
        } catch (ConflictException
                | HeldException
                | NothingThereException
                | PermissionDeniedException
                | CannotBeSignedException e) {
            return Came.notIssued(e.getMessage());
        } catch (RuntimeException e) {
            LOG.error("a certificate of batch " + task.batch() + " failed", e);
            return Came.notIssued("The service failed; its log says what happened. Ask for this certificate again.");
        }
    }
}
