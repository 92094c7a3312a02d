package dev.reelproof.api;

import dev.reelproof.app.limits.LimitSets;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;
import org.flywaydb.core.Flyway;

/** Ready to take a result: the database is migrated and limit sets are loaded. */
@Readiness
@Singleton
class ReadyForResults implements HealthCheck {
    private final Flyway flyway;
    private final LimitSets limitSets;
    private volatile int pending = -1;

    ReadyForResults(Flyway flyway, LimitSets limitSets) {
        this.flyway = flyway;
        this.limitSets = limitSets;
    }

    @Override
    public HealthCheckResponse call() {
        // Asked until nothing is pending; afterwards the check of the data source says whether the database still
        // answers.
        if (pending != 0) {
            pending = flyway.info().pending().length;
        }
        int loaded = limitSets.all().size();
        return HealthCheckResponse.named("ready to take a result")
                .withData("pending migrations", pending)
                .withData("limit sets", loaded)
                .status(pending == 0 && loaded > 0)
                .build();
    }
}
