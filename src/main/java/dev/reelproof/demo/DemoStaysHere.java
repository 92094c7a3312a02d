package dev.reelproof.demo;

import dev.reelproof.app.Settings;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.net.InetAddress;
import java.net.UnknownHostException;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Keeps the demo, whose people and passwords are printed, on this machine, unless a setting says that others may reach it. */
@Singleton
final class DemoStaysHere {
    private final Settings settings;
    private final String host;

    DemoStaysHere(Settings settings, @ConfigProperty(name = "quarkus.http.host") String host) {
        this.settings = settings;
        this.host = host;
    }

    void begin(@Observes StartupEvent start) {
        require(settings.demo(), host, settings.demoForAnyoneOnTheNetwork());
    }

    /**
     * Refuses a demo that other machines reach.
     *
     * @throws IllegalStateException when it is one, and nobody said that it may be
     */
    static void require(boolean demo, String host, boolean forAnyone) {
        if (demo && !forAnyone && !isThisMachine(host)) {
            throw new IllegalStateException("The demo's people and passwords are printed, and at the address '" + host
                    + "' other machines reach it. Leave out QUARKUS_HTTP_HOST; or, on a network where nobody minds, set"
                    + " REELPROOF_DEMO_FOR_ANYONE_ON_THE_NETWORK=true.");
        }
    }

    private static boolean isThisMachine(String host) {
        try {
            return !host.isBlank() && InetAddress.getByName(host).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }
}
