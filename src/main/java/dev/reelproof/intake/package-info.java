/**
 * From bytes to values: reads what bays and people send, strictly, and says of every fault where it stands and what would be
 * right.
 *
 * <p>Plain Java with a JSON and a CSV parser; knows nothing of HTTP or the database. May use {@code quantity}, {@code
 * measurement}, {@code network} and, for the limit files that come with the program and the terms that they set, {@code limit}.
 */
@NullMarked
package dev.reelproof.intake;

import org.jspecify.annotations.NullMarked;
