package dev.reelproof.store;

import dev.reelproof.store.server.EmbeddedDatabase;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;

/** Opens the tests' database as its owner, who may do what the service may not. */
public final class DatabaseOwner {
    private DatabaseOwner() {}

    public static Connection connect() throws SQLException {
        return DriverManager.getConnection(
                System.getProperty(EmbeddedDatabaseSource.STARTED),
                EmbeddedDatabase.OWNER,
                EmbeddedDatabase.password(
                        Path.of(System.getProperty(EmbeddedDatabaseSource.STARTED_IN)), EmbeddedDatabase.OWNER));
    }
}
