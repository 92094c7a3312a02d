package dev.reelproof.store;

import dev.reelproof.store.server.EmbeddedDatabase;
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
    static final String STARTED_IN = STARTED + ".folder";
    static final String FOLDER = "reelproof.data";

    /** The program ends with this code when it lost its database and could not start it again. */
    private static final int DATABASE_LOST = 74;

    private static final int ASKED_LAST = 50;

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
                    // With user and password: those of the data source are looked for among the names that sources
                    // list.
                case URL -> startedOnce() + "?user=" + EmbeddedDatabase.SERVICE_ROLE + "&password="
                        + password(EmbeddedDatabase.SERVICE_ROLE);
                case "quarkus.flyway.jdbc-url" -> embedded() ? startedOnce() : null;
                case "quarkus.flyway.username" -> embedded() ? EmbeddedDatabase.OWNER : null;
                case "quarkus.flyway.password" -> embedded() ? password(EmbeddedDatabase.OWNER) : null;
                default -> null;
            };
        }

        private String password(String user) {
            startedOnce();
            return EmbeddedDatabase.password(Path.of(System.getProperty(STARTED_IN)), user);
        }

        /** Whether no other source names a server: this one is asked last, so that its own answer comes back then. */
        private boolean embedded() {
            ConfigValue url = context.getValue(URL);
            String started = System.getProperty(STARTED);
            return url == null
                    || url.getValue() == null
                    || started != null && url.getValue().startsWith(started);
        }

        private String startedOnce() {
            synchronized (System.getProperties()) {
                String url = System.getProperty(STARTED);
                if (url == null) {
                    ConfigValue named = context.getValue(FOLDER);
                    Path folder = Path.of(named == null || named.getValue() == null ? ".data" : named.getValue());
                    EmbeddedDatabase database = EmbeddedDatabase.start(folder, () -> System.exit(DATABASE_LOST));
                    Runtime.getRuntime().addShutdownHook(new Thread(database::close, "stop of the database"));
                    url = database.address();
                    System.setProperty(STARTED_IN, folder.toAbsolutePath().toString());
                    System.setProperty(STARTED, url);
                }
                return url;
            }
        }
    }
}
