package dev.reelproof.app;

import dev.reelproof.store.DatabaseUnavailable;
import dev.reelproof.store.DatabaseWatch;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;

/** Tells whether the database can be asked. */
@ApplicationScoped
public class WatchDatabase {
    /** Who was refused may try again after so long. */
    public static final Duration TRY_AGAIN_AFTER = Duration.ofSeconds(5);

    private final DatabaseWatch watch;

    WatchDatabase(DatabaseWatch watch) {
        this.watch = watch;
    }

    /** Whether the database answered when it was asked last, a second ago or less. */
    public boolean answers() {
        return watch.answers();
    }

    /** Whether a failure means that the database could not be asked. */
    public static boolean isLost(Throwable failure) {
        return DatabaseUnavailable.isCauseOf(failure);
    }
}
