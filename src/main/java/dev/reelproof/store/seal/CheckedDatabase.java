package dev.reelproof.store.seal;

import dev.reelproof.seal.PublicSealKey;
import dev.reelproof.store.server.EmbeddedDatabase;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Optional;
import java.util.Properties;
import org.jspecify.annotations.Nullable;

/** Opens a database to be checked, to read it alone: a server by its address, or the embedded one in a data folder. */
public final class CheckedDatabase {
    private CheckedDatabase() {}

    /**
     * Checks the database of a server.
     *
     * @throws IllegalStateException when it cannot be read
     */
    public static LogCheck.Result ofServer(
            String url, @Nullable String user, @Nullable String password, PublicSealKey key, HeadsFile heads) {
        Properties properties = new Properties();
        if (user != null) {
            properties.setProperty("user", user);
        }
        if (password != null) {
            properties.setProperty("password", password);
        }
        try (Connection connection = DriverManager.getConnection(url, properties)) {
            connection.setReadOnly(true);
            connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
            connection.setAutoCommit(false);
            LogCheck.Result result = LogCheck.check(connection, key, heads);
            connection.rollback();
            return result;
        } catch (SQLException e) {
            throw new IllegalStateException("The database could not be read: " + e.getMessage(), e);
        }
    }

    /**
     * Checks the embedded database of a data folder, whether the service runs on it or not.
     *
     * @throws IllegalStateException when there is none, or it cannot be read
     */
    public static LogCheck.Result embedded(Path data, PublicSealKey key, HeadsFile heads) {
        if (!Files.isDirectory(data.resolve("db"))) {
            throw new IllegalStateException("There is no database in the data folder " + data
                    + ". Set REELPROOF_DATA to the folder, or QUARKUS_DATASOURCE_JDBC_URL to the server.");
        }
        Optional<String> running = EmbeddedDatabase.addressOfRunning(data);
        if (running.isPresent()) {
            return ofServer(running.get(), data, key, heads);
        }
        try (EmbeddedDatabase database = EmbeddedDatabase.start(data, () -> {})) {
            return ofServer(database.address(), data, key, heads);
        }
    }

    private static LogCheck.Result ofServer(String url, Path data, PublicSealKey key, HeadsFile heads) {
        String reader = EmbeddedDatabase.SERVICE_ROLE;
        return ofServer(url, reader, EmbeddedDatabase.password(data, reader), key, heads);
    }
}
