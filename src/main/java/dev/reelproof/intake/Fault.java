package dev.reelproof.intake;

/**
 * One thing that is wrong with what was sent.
 *
 * @param where a JSON pointer, {@code file:line}, {@code document:line:column}, or the name of what is wrong as a whole
 * @param message what is wrong and what would be right, as a sentence
 */
public record Fault(String where, String message) {}
