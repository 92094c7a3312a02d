package dev.reelproof.store;

import dev.reelproof.measurement.Product;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hibernate.Session;

/** The products of each plant. */
@ApplicationScoped
public class Products {
    private final Session session;

    Products(Session session) {
        this.session = session;
    }

    /**
     * Registers a product or changes its definition. Records keep the definition that they were judged by.
     *
     * @return whether it is new
     */
    @Transactional
    public boolean put(String plant, Product product, Instant now) {
        return Boolean.TRUE.equals(session.createNativeQuery(
                        """
                        insert into product (plant, id, definition, registered)
                        values (:plant, :id, cast(:definition as jsonb), :now)
                        on conflict (plant, id) do update set definition = excluded.definition
                        returning xmax = 0""",
                        Boolean.class)
                .setParameter("plant", plant)
                .setParameter("id", product.id())
                .setParameter("definition", RowJson.product(product))
                .setParameter("now", now)
                .getSingleResult());
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
