package dev.reelproof.store.seal;

import dev.reelproof.seal.LeafKind;

/** Finds rows that no leaf speaks of, and none will. */
final class UnsealedRows {
    private UnsealedRows() {}

    /** A query for their leaves' identifiers, in order; it takes the plant. */
    static String query(LeafKind kind) {
        SealedTable root = SealedTable.rootOf(kind);
        String id = "(" + root.leafId + ")";
        return "select " + id + " as id from " + root.table + " as t where t.plant = ?" + without("seal_leaf", kind, id)
                + without("seal_pending", kind, id) + " order by id";
    }

    private static String without(String table, LeafKind kind, String id) {
        return " and not exists (select from " + table + " as l where l.plant = t.plant and l.kind = '" + kind.word()
                + "' and l.id = " + id + ")";
    }
}
