package dev.reelproof.app;

import io.quarkus.arc.DefaultBean;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.ZoneOffset;

/** The one clock, in UTC, of whole milliseconds: what is kept reads the same again. Tests put their own in its place. */
class Clocks {
    @Produces
    @Singleton
    @DefaultBean
    Clock clock() {
        return Clock.tickMillis(ZoneOffset.UTC);
    }
}
