package dev.reelproof.store.certificate;

import dev.reelproof.certificate.CertificateFilter;
import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.store.reel.Reels;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Which certificates a list shows, in SQL. */
final class FilterSql {
    private FilterSql() {}

    /** In SQL, without what is not asked: the database then plans for what is. */
    static String condition(CertificateFilter filter) {
        StringBuilder sql = new StringBuilder("true");
        add(sql, !filter.text().isBlank(), "searched like :pattern escape '!'");
        add(sql, filter.reel() != null, "reel = :reel");
        add(sql, filter.order() != null, "order_number = :order");
        add(sql, filter.customer() != null, "customer = :customer");
        add(sql, filter.from() != null, "issued >= :from");
        add(sql, filter.before() != null, "issued < :before");
        add(
                sql,
                filter.after() != null,
                "issued <= :afterIssued and (issued < :afterIssued or (number, issue) > (:afterNumber, :afterIssue))");
        return sql.toString();
    }

    private static void add(StringBuilder sql, boolean isAsked, String condition) {
        if (isAsked) {
            sql.append(" and ").append(condition);
        }
    }

    /** The values of the condition's parameters. */
    static Map<String, Object> parameters(CertificateFilter filter) {
        Map<String, Object> values = new TreeMap<>();
        if (!filter.text().isBlank()) {
            values.put("pattern", Reels.containing(filter.text()));
        }
        put(values, "reel", filter.reel());
        put(values, "order", filter.order());
        put(values, "customer", filter.customer());
        put(values, "from", filter.from() == null ? null : filter.from().toInstant());
        put(values, "before", filter.before() == null ? null : filter.before().toInstant());
        IssuedCertificate after = filter.after();
        if (after != null) {
            values.put("afterIssued", after.issued().toInstant());
            values.put("afterNumber", after.number());
            values.put("afterIssue", after.issue());
        }
        return values;
    }

    private static void put(Map<String, Object> values, String name, @Nullable Object value) {
        if (value != null) {
            values.put(name, value);
        }
    }
}
