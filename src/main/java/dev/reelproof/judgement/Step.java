package dev.reelproof.judgement;

import org.jspecify.annotations.Nullable;

/**
 * A step in the chain behind a figure.
 *
 * @param title what was done: network file, renormalised, mixed mode, definition, measured, converted, derived, corrected, statistic,
 *     covered, allowed to vary, rounded, limit, margin, or a step of its uncertainty
 * @param detail the law, formula or place, with its figures
 * @param value the value after the step
 * @param unit the unit of the value
 * @param source where the law or figure comes from; absent for the measurement itself and plain arithmetic
 */
public record Step(String title, String detail, double value, String unit, @Nullable String source) {

    /** @throws IllegalArgumentException when it has no title or its value is not finite */
    public Step {
        if (title == null || title.isBlank()) {
            throw new IllegalArgumentException("a step says what was done");
        }
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("the step '" + title + "' has a finite value, not " + value);
        }
    }
}
