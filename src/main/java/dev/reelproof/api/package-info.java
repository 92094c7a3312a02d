/**
 * HTTP: resources and pages, the documents that they take and answer, problem documents. A resource reads the request, calls one use
 * case of {@code app} and shapes the answer.
 *
 * <p>May use {@code app} and what lies below it, but for {@code store}.
 */
@NullMarked
package dev.reelproof.api;

import org.jspecify.annotations.NullMarked;
