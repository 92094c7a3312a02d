package dev.reelproof.store.seal;

import dev.reelproof.seal.Leaf;
import dev.reelproof.seal.LeafKind;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/**
 * Writes down what a transaction has added, for the log, in that same transaction: what is kept is sealed, and what is not is not.
 *
 * <p>It takes no lock and no number: a leaf gets its place later ({@link LogSequence}). So nobody waits for anybody here.
 */
@ApplicationScoped
public class Sealing {
    private final Session session;
    private volatile @Nullable RowDigests digests;

    Sealing(Session session) {
        this.session = session;
    }

    /** Seals rows that this transaction has inserted; they must be in the database by now. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void seal(LeafKind kind, String plant, List<String> ids) {
        int sealed = session.doReturningWork(connection -> add(kind, plant, ids, connection));
        if (sealed != ids.size()) {
            throw new IllegalStateException(
                    "of " + ids.size() + " rows of kind " + kind.word() + " " + sealed + " were found to be sealed");
        }
    }

    /** Seals a file by its digest; a file that was sealed before stays as it was. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void sealAttachment(String plant, String sha256) {
        Leaf leaf = Leaf.ofAttachment(plant, sha256);
        session.doWork(connection -> {
            try (PreparedStatement insert = connection.prepareStatement(
                    """
                    insert into seal_pending (plant, kind, id, parts)
                    select p.plant, p.kind, p.id, p.parts
                    from (select cast(? as text) as plant, cast(? as text) as kind, cast(? as text) as id, cast(? as text) as parts) p
                    where not exists (select from seal_leaf l where (l.plant, l.kind, l.id) = (p.plant, p.kind, p.id))
                    on conflict do nothing""")) {
                insert.setString(1, plant);
                insert.setString(2, leaf.kind().word());
                insert.setString(3, leaf.id());
                insert.setString(4, LeafRows.parts(leaf));
                insert.executeUpdate();
            }
        });
    }

    private int add(LeafKind kind, String plant, List<String> ids, Connection connection) throws SQLException {
        try (PreparedStatement insert =
                connection.prepareStatement("insert into seal_pending (plant, kind, id, parts) select ?, ?, of.id,"
                        + " of.parts from (" + digests(connection).partsOf(kind) + ") as of")) {
            insert.setString(1, plant);
            insert.setString(2, kind.word());
            RowDigests.bind(insert, 3, kind, plant, ids);
            return insert.executeUpdate();
        }
    }

    /** The columns change with a migration alone, before the service starts. */
    private RowDigests digests(Connection connection) throws SQLException {
        RowDigests read = digests;
        if (read == null) {
            read = RowDigests.read(connection);
            digests = read;
        }
        return read;
    }
}
