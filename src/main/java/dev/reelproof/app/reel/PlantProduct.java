package dev.reelproof.app.reel;

import dev.reelproof.measurement.Product;

/**
 * A product of a plant.
 *
 * @param plant the plant
 * @param product the product
 */
public record PlantProduct(String plant, Product product) {}
