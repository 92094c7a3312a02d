package dev.reelproof.app.reel;

import dev.reelproof.access.Action;
import dev.reelproof.app.Plants;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.PairCount;
import dev.reelproof.measurement.Product;
import dev.reelproof.store.access.AuditTrail;
import dev.reelproof.store.reel.Changes;
import dev.reelproof.store.reel.Products;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Registers a product, or changes its definition. Records keep the definition by which they were judged. */
@ApplicationScoped
public class DefineProduct {
    private final Plants plants;
    private final LimitSets limitSets;
    private final Products products;
    private final AuditTrail audit;
    private final Clock clock;

    DefineProduct(Plants plants, LimitSets limitSets, Products products, AuditTrail audit, Clock clock) {
        this.plants = plants;
        this.limitSets = limitSets;
        this.products = products;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * A product as it is defined now.
     *
     * @param isNew whether it was registered by this
     */
    public record Defined(PlantProduct product, boolean isNew) {}

    /**
     * Defines a product; the same definition again changes nothing.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param sent gives the product; asked only once the caller may define products
     * @throws IntakeException when no limit set judges such a product
     */
    @Transactional
    public Defined define(@Nullable String plantNamed, Supplier<Product> sent) {
        String plant = plants.forAction(Action.DEFINE_PRODUCTS, plantNamed, "plant");
        Product product = sent.get();
        requireLimitSet(product);
        Changes changes = products.put(plant, product, clock.instant());
        if (!changes.isEmpty()) {
            audit.write(
                    plant,
                    changes.isNew() ? "product-registered" : "product-changed",
                    "product/" + product.id(),
                    null,
                    changes.values());
        }
        return new Defined(new PlantProduct(plant, product), changes.isNew());
    }

    private void requireLimitSet(Product product) {
        List<LimitSet> revisions = limitSets.all().stream()
                .filter(set -> set.id().equals(product.limitSet()))
                .toList();
        if (revisions.isEmpty()) {
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "/limitSet",
                    "unknown limit set '" + product.limitSet() + "'; known: "
                            + String.join(
                                    ", ",
                                    limitSets.all().stream()
                                            .map(LimitSet::id)
                                            .distinct()
                                            .toList()));
        }
        if (revisions.stream().noneMatch(set -> set.pairs().holds(product.pairs()))) {
            PairCount pairs = revisions.get(revisions.size() - 1).pairs();
            throw IntakeException.of(
                    IntakeException.Kind.CONTENT,
                    "/pairs",
                    "limit set " + product.limitSet() + " holds for " + pairs.from() + " to " + pairs.to()
                            + " pairs, not for " + product.pairs());
        }
    }
}
