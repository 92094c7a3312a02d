package dev.reelproof.store.reel;

import dev.reelproof.measurement.Product;
import dev.reelproof.store.AdvisoryLocks;
import dev.reelproof.store.Changes;
import dev.reelproof.store.RowJson;
import dev.reelproof.store.access.AuditTrail;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hibernate.Session;

/** The products of each plant. */
@ApplicationScoped
public class Products {
    private final Session session;
    private final AuditTrail audit;

    Products(Session session, AuditTrail audit) {
        this.session = session;
        this.audit = audit;
    }

    /**
     * Registers a product or changes its definition. Records keep the definition that they were judged by.
     * The same definition again changes nothing.
     *
     * @return whether it is new
     */
    @Transactional
    public boolean put(String plant, Product product, Instant now) {
        String name = "product/" + product.id();
        AdvisoryLocks.take(session, plant + "/" + name);
        String definition = RowJson.product(product);
        Optional<Product> before = byId(plant, product.id());
        Map<String, Object> changes =
                Changes.between(before.map(RowJson::product).orElse("{}"), definition);
        if (before.isPresent() && changes.isEmpty()) {
            return false;
        }
        session.createNativeMutationQuery(
                        """
                        insert into product (plant, id, definition, registered)
                        values (:plant, :id, cast(:definition as jsonb), :now)
                        on conflict (plant, id) do update set definition = excluded.definition""")
                .setParameter("plant", plant)
                .setParameter("id", product.id())
                .setParameter("definition", definition)
                .setParameter("now", now)
                .executeUpdate();
        session.flush();
        session.clear();
        audit.write(plant, before.isEmpty() ? "product-registered" : "product-changed", name, null, changes);
        return before.isEmpty();
    }

    @Transactional
    public Optional<Product> byId(String plant, String id) {
        return ProductRow.<ProductRow>find("plant = ?1 and id = ?2", plant, id)
                .firstResultOptional()
                .map(row -> RowJson.product(row.id, row.definition));
    }

    /** All products of a plant, by code. */
    @Transactional
    public List<Product> all(String plant) {
        return ProductRow.<ProductRow>find("plant = ?1 order by id", plant).stream()
                .map(row -> RowJson.product(row.id, row.definition))
                .toList();
    }
}
