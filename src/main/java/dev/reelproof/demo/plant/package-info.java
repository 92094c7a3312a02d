/**
 * The invented demo plant: a small simulation of copper cable that writes {@code demo-data/}.
 *
 * <p>Plain Java, seeded, the same bytes on every machine ({@code StrictMath}, {@code java.util.Random}, no locale, no clock).
 * Nothing else in the program uses it; the service reads the files like anybody's uploads. The formulas are textbook line
 * theory, simplified until curves look like cable; nothing is judged by them.
 */
@NullMarked
package dev.reelproof.demo.plant;

import org.jspecify.annotations.NullMarked;
