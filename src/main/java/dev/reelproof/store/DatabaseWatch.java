package dev.reelproof.store;

import io.agroal.api.AgroalDataSource;
import io.agroal.api.AgroalDataSource.FlushMode;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.interceptor.Interceptor;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Optional;
import java.util.Properties;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Asks the database each second whether it answers, on a connection of its own, so that nobody waits for one that is lost, frozen or
 * starting again.
 *
 * <p>When it stops answering, the connections of the pool are cut: what waits on them fails at once instead of for ever.
 */
@ApplicationScoped
public class DatabaseWatch {
    private static final Logger LOG = Logger.getLogger(DatabaseWatch.class);
    private static final Duration BETWEEN = Duration.ofSeconds(1);

    /** One question in so long, or the database counts as lost; a healthy one answers in less than a millisecond. */
    private static final Duration LONGEST_ANSWER = Duration.ofSeconds(3);

    private static final Duration LONGEST_END = Duration.ofSeconds(5);

    private final AgroalDataSource pool;
    private final String url;
    private final Properties properties = new Properties();
    private final Thread watcher = new Thread(this::watch, "watch over the database");
    private volatile boolean answers = true;
    private volatile boolean ending;

    DatabaseWatch(
            AgroalDataSource pool,
            @ConfigProperty(name = "quarkus.datasource.jdbc.url") String url,
            @ConfigProperty(name = "quarkus.datasource.username") Optional<String> user,
            @ConfigProperty(name = "quarkus.datasource.password") Optional<String> password) {
        this.pool = pool;
        this.url = url;
        String seconds = Long.toString(LONGEST_ANSWER.toSeconds());
        user.ifPresent(name -> properties.setProperty("user", name));
        password.ifPresent(word -> properties.setProperty("password", word));
        properties.setProperty("connectTimeout", seconds);
        properties.setProperty("loginTimeout", seconds);
        properties.setProperty("socketTimeout", seconds);
        properties.setProperty("ApplicationName", "reelproof watch");
        watcher.setDaemon(true);
    }

    /** Whether the database answered when it was asked last. */
    public boolean answers() {
        return answers;
    }

    void begin(@Observes @Priority(Interceptor.Priority.LIBRARY_BEFORE) StartupEvent start) {
        watcher.start();
    }

    void end(@Observes ShutdownEvent end) {
        ending = true;
        watcher.interrupt();
        try {
            watcher.join(LONGEST_END.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void watch() {
        @Nullable Connection own = null;
        try {
            while (!ending) {
                own = ask(own);
                Thread.sleep(BETWEEN.toMillis());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            close(own);
        }
    }

    /** Asks once; gives the connection to ask on next, none when the database does not answer. */
    private @Nullable Connection ask(@Nullable Connection connection) {
        @Nullable Connection own = connection;
        try {
            if (own == null) {
                own = DriverManager.getConnection(url, properties);
            }
            try (Statement question = own.createStatement()) {
                question.execute("select 1");
            }
            if (!answers) {
                LOG.info("The database answers again.");
            }
            answers = true;
            return own;
        } catch (SQLException e) {
            close(own);
            if (answers && !ending) {
                answers = false;
                LOG.errorf("The database does not answer (%s); requests are refused until it does.", e.getMessage());
            }
            // Those that were opened since and wait are cut too.
            pool.flush(FlushMode.ALL);
            return null;
        }
    }

    private static void close(@Nullable Connection connection) {
        if (connection != null) {
            try {
                connection.close();
            } catch (SQLException e) {
                LOG.debug("The watch's connection was lost already.", e);
            }
        }
    }
}
