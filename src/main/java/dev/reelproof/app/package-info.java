/**
 * The use cases, one class each, in the trade's verbs, in a package a subject. Each opens its transaction, asks what the caller may,
 * calls the core and the store, and writes the audit entry. May use the core, {@code access}, {@code intake}, {@code pdf} and
 * {@code store}; knows no HTTP, no SQL and no JSON shape.
 */
@NullMarked
package dev.reelproof.app;

import org.jspecify.annotations.NullMarked;
