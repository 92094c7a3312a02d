package dev.reelproof.api;

import dev.reelproof.app.CheckReadiness;
import dev.reelproof.app.CheckReadiness.Readiness;
import io.smallrye.health.api.AsyncHealthCheck;
import io.smallrye.mutiny.Uni;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.inject.Singleton;
import org.eclipse.microprofile.health.HealthCheckResponse;

/** Tells whether the service can take a result. Once it is migrated no worker is needed to answer, nor the database. */
@org.eclipse.microprofile.health.Readiness
@Singleton
class ReadyForResults implements AsyncHealthCheck {
    private final CheckReadiness checking;

    ReadyForResults(CheckReadiness checking) {
        this.checking = checking;
    }

    @Override
    public Uni<HealthCheckResponse> call() {
        Uni<Readiness> asked = Uni.createFrom().item(checking::check);
        return (checking.isMigrated() ? asked : asked.runSubscriptionOn(Infrastructure.getDefaultWorkerPool()))
                .map(ReadyForResults::answer);
    }

    private static HealthCheckResponse answer(Readiness readiness) {
        return HealthCheckResponse.named("ready to take a result")
                .withData("database answers", readiness.databaseAnswers())
                .withData("pending migrations", readiness.pendingMigrations())
                .withData("limit sets", readiness.limitSets())
                .status(readiness.isReady())
                .build();
    }
}
