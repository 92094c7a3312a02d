package dev.reelproof.demo;

import dev.reelproof.app.access.DemoTokenFile;
import io.quarkus.vertx.http.HttpServerStart;
import jakarta.enterprise.event.ObservesAsync;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.net.URI;
import java.util.Set;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Starts the loading of the demo once the service listens, when {@code reelproof.demo} is true (REELPROOF_DEMO=true). */
@Singleton
public final class DemoLoader {
    private static final Set<String> ANY_HOST = Set.of("0.0.0.0", "::", "");

    private final boolean demo;
    private final DemoTokenFile tokenFile;
    private final int configuredPort;

    @Inject
    DemoLoader(
            @ConfigProperty(name = "reelproof.demo", defaultValue = "false") boolean demo,
            DemoTokenFile tokenFile,
            @ConfigProperty(name = "quarkus.http.port", defaultValue = "8080") int configuredPort) {
        this.demo = demo;
        this.tokenFile = tokenFile;
        this.configuredPort = configuredPort;
    }

    void listening(@ObservesAsync HttpServerStart start) {
        if (demo) {
            int port = start.options().getPort() > 0 ? start.options().getPort() : configuredPort;
            String host = start.options().getHost();
            URI address =
                    URI.create("http://" + (host == null || ANY_HOST.contains(host) ? "localhost" : host) + ":" + port);
            // A thread of its own: readiness does not wait for the demo, and shutting down does not either.
            DemoLoading loading =
                    new DemoLoading(address, tokenFile.read().orElseThrow(), tokenFile.path(), System.out);
            Thread thread = new Thread(loading, "demo-loader");
            thread.setDaemon(true);
            thread.start();
        }
    }
}
