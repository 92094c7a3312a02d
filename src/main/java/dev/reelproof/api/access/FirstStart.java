package dev.reelproof.api.access;

import dev.reelproof.app.Settings;
import dev.reelproof.app.access.MakeDemoAccounts;
import dev.reelproof.app.access.SetUp;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.vertx.http.HttpServerStart;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.ObservesAsync;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.io.PrintStream;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Makes the demo's accounts in the demo; else prints the set-up link while nobody can sign in, once the service listens. */
@Singleton
class FirstStart {
    private final SetUp setUp;
    private final MakeDemoAccounts demoAccounts;
    private final Settings settings;
    private final int configuredPort;
    // Printed and not logged: a log is kept and read by others.
    private final PrintStream out;
    private volatile Optional<String> link = Optional.empty();

    @Inject
    FirstStart(
            SetUp setUp,
            MakeDemoAccounts demoAccounts,
            Settings settings,
            @ConfigProperty(name = "quarkus.http.port", defaultValue = "8080") int configuredPort) {
        this(setUp, demoAccounts, settings, configuredPort, System.out);
    }

    FirstStart(SetUp setUp, MakeDemoAccounts demoAccounts, Settings settings, int configuredPort, PrintStream out) {
        this.setUp = setUp;
        this.demoAccounts = demoAccounts;
        this.settings = settings;
        this.configuredPort = configuredPort;
        this.out = out;
    }

    void start(@Observes StartupEvent event) {
        if (settings.demo()) {
            demoAccounts.make();
        } else {
            link = setUp.makeLink();
        }
    }

    /** A link to a port that another program has would lead there. */
    void listening(@ObservesAsync HttpServerStart start) {
        int port = start.options().getPort() > 0 ? start.options().getPort() : configuredPort;
        link.ifPresent(secret -> {
            out.println();
            out.println("Nobody can sign in yet. Open this link within " + SetUp.LASTS.toHours()
                    + " hours to make the first administrator; it works once:");
            out.println("http://localhost:" + port + "/set-up.html#" + secret);
            out.println();
        });
        link = Optional.empty();
    }
}
