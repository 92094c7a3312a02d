package dev.reelproof.app.reel;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.store.reel.Products;
import jakarta.inject.Singleton;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Finds products as they are defined now. */
@Singleton
public class FindProducts {
    private final Plants plants;
    private final Products products;

    FindProducts(Plants plants, Products products) {
        this.plants = plants;
        this.products = products;
    }

    /**
     * All products of a plant, by code.
     *
     * @param plantNamed the plant; the caller's when none is named
     */
    public List<PlantProduct> all(@Nullable String plantNamed) {
        String plant = plants.named(plantNamed, "plant");
        return products.all(plant).stream()
                .map(product -> new PlantProduct(plant, product))
                .toList();
    }

    /**
     * The product of a code.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @throws NothingThereException when there is none
     */
    public PlantProduct byCode(@Nullable String plantNamed, String code) {
        String plant = plants.named(plantNamed, "plant");
        return products.byId(plant, code)
                .map(product -> new PlantProduct(plant, product))
                .orElseThrow(() ->
                        new NothingThereException("Product '" + code + "' is not registered at plant " + plant + "."));
    }
}
