package dev.reelproof.store;

import io.smallrye.config.ConfigSourceContext;
import io.smallrye.config.ConfigSourceFactory;
import io.smallrye.config.ConfigValue;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.eclipse.microprofile.config.spi.ConfigSource;

/**
 * Answers {@code quarkus.datasource.jdbc.url} when no other source of configuration does, by starting the embedded database.
 *
 * <p>Its ordinal is so low that it is asked last. The configuration is loaded in more than one class loader of one program, so
 * that "already started" is kept in a system property, which all of them see.
 */
public final class EmbeddedDatabaseSource implements ConfigSourceFactory {
    static final String URL = "quarkus.datasource.jdbc.url";
    static final String STARTED = "dev.reelproof.store.embedded-database";
    static final String FOLDER = "reelproof.data";

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
        public String getValue(String name) {
            return URL.equals(name) ? startedOnce() : null;
        }

        private String startedOnce() {
            synchronized (System.getProperties()) {
                String url = System.getProperty(STARTED);
                if (url == null) {
                    ConfigValue folder = context.getValue(FOLDER);
                    url = EmbeddedDatabase.start(
                                    Path.of(folder == null || folder.getValue() == null ? ".data" : folder.getValue()))
                            .jdbcUrl();
                    System.setProperty(STARTED, url);
                }
                return url;
            }
        }
    }
}
