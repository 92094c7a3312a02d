package dev.reelproof;

import io.quarkus.runtime.Quarkus;
import io.quarkus.runtime.QuarkusBindException;
import io.quarkus.runtime.annotations.QuarkusMain;
import io.quarkus.runtime.configuration.ConfigurationException;
import io.smallrye.config.ConfigValidationException;
import java.util.List;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Runs a command when the first argument names one, before anything of the service starts; else starts the service, and says in a
 * sentence why it does not start where that is a matter of settings.
 */
@QuarkusMain
public final class Main {
    private Main() {}

    public static void main(String... arguments) {
        if (Commands.isMeant(arguments)) {
            System.exit(Commands.run(List.of(arguments), System.out, System.err));
        }
        Quarkus.run(null, Main::exit, arguments);
    }

    private static void exit(int code, @Nullable Throwable cause) {
        if (cause != null) {
            reason(cause).ifPresentOrElse(System.err::println, () -> Logger.getLogger(Main.class)
                    .error("The service does not start", cause));
        }
        System.exit(code);
    }

    /** Why the service does not start, for the person who starts it; empty when that is not a matter of settings. */
    static Optional<String> reason(Throwable cause) {
        Throwable root = cause;
        while (root.getCause() != null && !isOfSettings(root)) {
            root = root.getCause();
        }
        if (root instanceof QuarkusBindException taken) {
            return Optional.of("Port " + taken.getPort() + " is taken by another program. Stop that program, or set"
                    + " QUARKUS_HTTP_PORT to another port.");
        }
        return isOfSettings(root) ? Optional.ofNullable(root.getMessage()) : Optional.empty();
    }

    private static boolean isOfSettings(Throwable cause) {
        return cause instanceof QuarkusBindException
                || cause instanceof ConfigurationException
                || cause instanceof ConfigValidationException;
    }
}
