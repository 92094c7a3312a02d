/**
 * What a person reads: titles, plain words, places, printed figures, obstacles with their remedies, verdicts with the next steps.
 *
 * <p>Made once, from one catalogue of words and one formatter of figures; JSON answers, page and certificate repeat it. Knows nothing
 * of HTTP, SQL, PDF or the clock. Another language is another file beside {@code Catalogue.properties}.
 */
@NullMarked
package dev.reelproof.wording;

import org.jspecify.annotations.NullMarked;
