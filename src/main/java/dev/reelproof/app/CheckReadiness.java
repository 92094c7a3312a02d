package dev.reelproof.app;

import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.store.Migrations;
import jakarta.inject.Singleton;

/** Checks whether the service can take a result: the database answers, it is migrated, and limit sets are loaded. */
@Singleton
public class CheckReadiness {
    private final WatchDatabase watch;
    private final Migrations migrations;
    private final LimitSets limitSets;
    private volatile boolean isMigrated;

    CheckReadiness(WatchDatabase watch, Migrations migrations, LimitSets limitSets) {
        this.watch = watch;
        this.migrations = migrations;
        this.limitSets = limitSets;
    }

    /** What stands in the way. */
    public record Readiness(boolean databaseAnswers, int pendingMigrations, int limitSets) {
        public boolean isReady() {
            return databaseAnswers && pendingMigrations == 0 && limitSets > 0;
        }
    }

    /** Whether the database was found migrated; {@link #check} then asks nobody. */
    public boolean isMigrated() {
        return isMigrated;
    }

    /** Asks the database until nothing is pending; afterwards the watch over it says whether it still answers. */
    public Readiness check() {
        int pending = isMigrated ? 0 : migrations.pending();
        isMigrated = pending == 0;
        return new Readiness(watch.answers(), pending, limitSets.all().size());
    }
}
