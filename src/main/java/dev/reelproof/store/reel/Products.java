package dev.reelproof.store.reel;

import dev.reelproof.measurement.Product;
import dev.reelproof.store.AdvisoryLocks;
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

    private record Row(String id, String definition) {
        Product product() {
            return ProductJson.read(id, definition);
        }
    }

    /**
     * Registers a product or changes its definition. Records keep the definition that they were judged by.
     * The same definition again changes nothing.
     *
     * @return what it changed
     */
    @Transactional
    public Changes put(String plant, Product product, Instant now) {
        AdvisoryLocks.take(session, plant + "/product/" + product.id());
        String definition = ProductJson.write(product);
        Changes changes = Changes.between(byId(plant, product.id()).map(ProductJson::write), definition);
        if (!changes.isEmpty()) {
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
        }
        return changes;
    }

    /** The product of a code, as it is defined now; empty when there is none. */
    @Transactional
    public Optional<Product> byId(String plant, String id) {
        return session.createNativeQuery(
                        "select id, cast(definition as text) from product where plant = :plant and id = :id", Row.class)
                .setParameter("plant", plant)
                .setParameter("id", id)
                .uniqueResultOptional()
                .map(Row::product);
    }

    /** All products of a plant, by code. */
    @Transactional
    public List<Product> all(String plant) {
        return session
                .createNativeQuery(
                        "select id, cast(definition as text) from product where plant = :plant order by id", Row.class)
                .setParameter("plant", plant)
                .getResultList()
                .stream()
                .map(Row::product)
                .toList();
    }
}
