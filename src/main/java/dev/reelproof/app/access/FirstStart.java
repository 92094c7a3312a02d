package dev.reelproof.app.access;

import dev.reelproof.access.AccessSettings;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.io.PrintStream;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Opens the demo's doors in the demo; else prints the set-up link while nobody can sign in. */
@Singleton
class FirstStart {
    // Printed and not logged: a log is kept and read by others.
    private static final PrintStream OUT = System.out;

    private final SetUp setUp;
    private final DemoCredentials demoDoors;
    private final AccessSettings settings;
    private final int port;

    FirstStart(
            SetUp setUp,
            DemoCredentials demoDoors,
            AccessSettings settings,
            @ConfigProperty(name = "quarkus.http.port", defaultValue = "8080") int port) {
        this.setUp = setUp;
        this.demoDoors = demoDoors;
        this.settings = settings;
        this.port = port;
    }

    void start(@Observes StartupEvent event) {
        if (settings.demo()) {
            demoDoors.open(settings.trail());
            return;
        }
        setUp.makeLink().ifPresent(secret -> {
            OUT.println();
            OUT.println("Nobody can sign in yet. Open this link within " + SetUp.LASTS.toHours()
                    + " hours to make the first administrator; it works once:");
            OUT.println("http://localhost:" + port + "/set-up.html#" + secret);
            OUT.println();
        });
    }
}
