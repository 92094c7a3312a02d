package dev.reelproof.store;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;

/** Opens the tests' database as its owner, who may do what the service may not. */
public final class DatabaseOwner {
    private DatabaseOwner() {}

    public static Connection connect() throws SQLException {
        return DriverManager.getConnection(
                EmbeddedDatabase.as(EmbeddedDatabase.OWNER, System.getProperty(EmbeddedDatabaseSource.STARTED)));
    }
}
