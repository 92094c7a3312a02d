package dev.reelproof.store.seal;

import dev.reelproof.seal.LeafKind;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The tables whose rows are sealed, by the leaf that covers them. The first of a kind is its root: the leaf is named after it.
 *
 * <p>{@code k.id} is the leaf's identifier. A record's id is a UUID of version 7, whose first 48 bits are its time of receipt in
 * milliseconds: that leads to the partition.
 */
enum SealedTable {
    UPLOAD(LeafKind.UPLOAD, "upload", "t.record_id::text", "t.record_id = k.id::uuid", null),
    UPLOAD_PART(LeafKind.UPLOAD, "upload_part", "t.record_id::text", "t.record_id = k.id::uuid", "ordinal"),
    TEST_RECORD(LeafKind.RECORD, "test_record", "t.id::text", "t.id = k.id::uuid and " + Received.BY_ID, null),
    FINDING(
            LeafKind.RECORD,
            "finding",
            "t.record_id::text",
            "t.record_id = k.id::uuid and " + Received.BY_ID,
            "ordinal"),
    SWEEP_BLOCK(
            LeafKind.RECORD,
            "sweep_block",
            "t.record_id::text",
            "t.record_id = k.id::uuid and " + Received.BY_ID,
            null),
    CERTIFICATE(
            LeafKind.CERTIFICATE,
            "certificate",
            "t.number || '/' || t.issue",
            "t.number = substring(k.id from '^(.*)/[0-9]+$') and t.issue = substring(k.id from '/([0-9]+)$')::int",
            null),
    COLLECTIVE_CERTIFICATE(
            LeafKind.COLLECTIVE_CERTIFICATE, "collective_certificate", "t.number", "t.number = k.id", null),
    CERTIFICATE_WITHDRAWAL(LeafKind.WITHDRAWAL, "certificate_withdrawal", "t.number", "t.number = k.id", null),
    RETEST_ACCEPTANCE(LeafKind.RETEST_ACCEPTANCE, "retest_acceptance", "t.id::text", "t.id = k.id::bigint", null),
    LIMIT_REVISION_WRONG(
            LeafKind.LIMITS_FOUND_WRONG,
            "limit_revision_wrong",
            "t.limit_set || '/' || t.revision",
            "t.limit_set = substring(k.id from '^(.*)/[0-9]+$') and t.revision = substring(k.id from '/([0-9]+)$')::int",
            null),
    CONCESSION(LeafKind.CONCESSION, "concession", "t.id::text", "t.id = k.id::bigint", null),
    CONCESSION_DECISION(
            LeafKind.CONCESSION_DECISION,
            "concession_decision",
            "t.concession::text",
            "t.concession = k.id::bigint",
            null),
    JUDGED_AGAIN(LeafKind.JUDGED_AGAIN, "judged_again", "t.record_id::text", "t.record_id = k.id::uuid", null),
    HOLD(LeafKind.HOLD, "hold", "t.id::text", "t.id = k.id::bigint", null),
    HOLD_RELEASE(
            LeafKind.HOLD_RELEASE,
            "hold_release",
            "t.hold || '/' || t.ordinal",
            "t.hold = substring(k.id from '^(.*)/')::bigint and t.ordinal = substring(k.id from '/([0-9]+)$')::int",
            null),
    AUDIT_ENTRY(LeafKind.AUDIT_ENTRY, "audit_entry", "t.id::text", "t.id = k.id::bigint", null);

    private interface Received {
        String BY_ID =
                """
                t.received = timestamptz '1970-01-01 00:00:00+00'
                    + ('x' || substr(replace(k.id, '-', ''), 1, 12))::bit(48)::bigint * interval '1 millisecond'""";
    }

    final LeafKind kind;
    final String table;

    /** The leaf's identifier, of a row {@code t}. */
    final String leafId;

    /** Finds the rows {@code t} of the leaf {@code k}. */
    final String ofLeaf;

    /** The column that tells the rows of one leaf apart; absent where there is one. */
    final @Nullable String ordinal;

    SealedTable(LeafKind kind, String table, String leafId, String ofLeaf, @Nullable String ordinal) {
        this.kind = kind;
        this.table = table;
        this.leafId = leafId;
        this.ofLeaf = ofLeaf;
        this.ordinal = ordinal;
    }

    /** Whether its rows lie in partitions by their time of receipt, so that a query must say within which time they are. */
    boolean isPartitioned() {
        return ofLeaf.endsWith(Received.BY_ID);
    }

    /** The tables of a kind of leaf, its root first. */
    static List<SealedTable> of(LeafKind kind) {
        return Stream.of(values()).filter(table -> table.kind == kind).toList();
    }

    /** A query for the plants that have rows of leaves. */
    static String plants() {
        return Stream.of(LeafKind.values())
                .filter(LeafKind::hasRow)
                .map(kind -> "select plant from " + rootOf(kind).table)
                .collect(Collectors.joining(" union "));
    }

    /** The table that a leaf of the kind is named after. */
    static SealedTable rootOf(LeafKind kind) {
        return of(kind).get(0);
    }
}
