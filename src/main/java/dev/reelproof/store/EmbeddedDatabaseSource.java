package dev.reelproof.store;

import io.smallrye.config.ConfigSourceContext;
import io.smallrye.config.ConfigSourceFactory;
import io.smallrye.config.ConfigValue;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.eclipse.microprofile.config.spi.ConfigSource;
import org.jspecify.annotations.Nullable;

/**
 * Answers {@code quarkus.datasource.jdbc.url} when no other source of configuration does, by starting the embedded database; and
 * with it the two users: migrations run as its owner, the service connects as a role that may not change records.
 *
 * <p>Its ordinal is so low that it is asked last. The configuration is loaded in more than one class loader of one program, so
 * that "already started" is kept in a system property, which all of them see.
 */
public final class EmbeddedDatabaseSource implements ConfigSourceFactory {
    static final String URL = "quarkus.datasource.jdbc.url";
    static final String STARTED = "dev.reelproof.store.embedded-database";
    static final String FOLDER = "reelproof.data";

    /** The role that the service connects as; the migrations' callback creates it and says what it may do. */
    static final String SERVICE_ROLE = "reelproof_service";

    private static final String OWNER = EmbeddedDatabase.OWNER;
    private static final int ASKED_LAST = 50;
    private static final String NOT_ASKED_FOR = "the embedded server asks for none";

    @Override
    public Iterable<ConfigSource> getConfigSources(ConfigSourceContext context) {
        return List.of(new Source(context));
    }

    private record Source(ConfigSourceContext context) implements ConfigSource {
        @Override
        public int getOrdinal() {
            return ASKED_LAST;
        }

        @Override
        public String getName() {
            return "embedded database";
        }

        @Override
        public Set<String> getPropertyNames() {
            // Left empty on purpose: a build that lists all names must not start a database.
            return Set.of();
        }

        @Override
        public @Nullable String getValue(String name) {
            return switch (name) {
                case URL -> EmbeddedDatabase.as(SERVICE_ROLE, startedOnce());
                case "quarkus.flyway.jdbc-url" -> embedded() ? EmbeddedDatabase.as(OWNER, startedOnce()) : null;
                case "quarkus.flyway.username" -> embedded() ? OWNER : null;
                case "quarkus.flyway.password" -> embedded() ? NOT_ASKED_FOR : null;
                default -> null;
            };
        }

        /** Whether no other source names a server: this one is asked last, so that its own answer comes back then. */
        private boolean embedded() {
            ConfigValue url = context.getValue(URL);
            return url == null || url.getValue() == null || url.getValue().equals(System.getProperty(STARTED));
        }

        private String startedOnce() {
            synchronized (System.getProperties()) {
                String url = System.getProperty(STARTED);
                if (url == null) {
                    ConfigValue folder = context.getValue(FOLDER);
                    url = EmbeddedDatabase.start(
                                    Path.of(folder == null || folder.getValue() == null ? ".data" : folder.getValue()))
                            .address();
                    System.setProperty(STARTED, url);
                }
                return url;
            }
        }
    }
}
