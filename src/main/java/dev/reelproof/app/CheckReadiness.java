package dev.reelproof.app;

import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.store.Migrations;
import jakarta.inject.Singleton;

/** Checks whether the service can take a result: the database is migrated and limit sets are loaded. */
@Singleton
public class CheckReadiness {
    private final Migrations migrations;
    private final LimitSets limitSets;
    private volatile boolean isMigrated;

    CheckReadiness(Migrations migrations, LimitSets limitSets) {
        this.migrations = migrations;
        this.limitSets = limitSets;
    }

    /** What stands in the way, as numbers. */
    public record Readiness(int pendingMigrations, int limitSets) {
        public boolean isReady() {
            return pendingMigrations == 0 && limitSets > 0;
        }
    }

    /** Asks the database until nothing is pending; afterwards the check of the data source says whether it still answers. */
    public Readiness check() {
        int pending = isMigrated ? 0 : migrations.pending();
        isMigrated = pending == 0;
        return new Readiness(pending, limitSets.all().size());
    }
}
