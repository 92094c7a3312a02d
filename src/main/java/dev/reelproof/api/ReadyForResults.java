package dev.reelproof.api;

import dev.reelproof.app.CheckReadiness;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/** Tells whether the service can take a result. */
@Readiness
@Singleton
class ReadyForResults implements HealthCheck {
    private final CheckReadiness checking;

    ReadyForResults(CheckReadiness checking) {
        this.checking = checking;
    }

    @Override
    public HealthCheckResponse call() {
        CheckReadiness.Readiness readiness = checking.check();
        return HealthCheckResponse.named("ready to take a result")
                .withData("pending migrations", readiness.pendingMigrations())
                .withData("limit sets", readiness.limitSets())
                .status(readiness.isReady())
                .build();
    }
}
