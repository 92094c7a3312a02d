package dev.reelproof.judgement;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;

/**
 * How a derived value is formed from the values of its parts at one frequency.
 *
 * @param value of the parts
 * @param gradient its derivatives by the parts, in their order; empty where it is counted and has none
 * @param words the formula for people
 * @param source where it comes from
 */
record Formula(
        ToDoubleFunction<double[]> value, Optional<UnaryOperator<double[]>> gradient, String words, String source) {

    static Formula of(ToDoubleFunction<double[]> value, UnaryOperator<double[]> gradient, String words, String source) {
        return new Formula(value, Optional.of(gradient), words, source);
    }

    /** A figure that is counted: it has no derivative, so the uncertainty model must have an entry for itself. */
    static Formula counted(ToDoubleFunction<double[]> value, String words, String source) {
        return new Formula(value, Optional.empty(), words, source);
    }
}
