package dev.reelproof.api;

import org.eclipse.microprofile.openapi.annotations.media.Schema;

/** A value with its unit. */
@Schema(name = "QuantityValue", description = "A value with its unit")
public record Quantity(double value, String unit) {}
