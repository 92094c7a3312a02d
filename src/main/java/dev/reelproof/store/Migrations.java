package dev.reelproof.store;

import jakarta.inject.Singleton;
import org.flywaydb.core.Flyway;

/** The migrations of the database. */
@Singleton
public class Migrations {
    private final Flyway flyway;

    Migrations(Flyway flyway) {
        this.flyway = flyway;
    }

    /** How many are not applied yet. */
    public int pending() {
        return flyway.info().pending().length;
    }
}
