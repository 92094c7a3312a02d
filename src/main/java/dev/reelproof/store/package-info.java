/**
 * Keeping and finding: PostgreSQL through Hibernate ORM Panache, and the PostgreSQL that the program brings with it.
 *
 * <p>May use every room above. Its rows stay inside; what it hands out are values.
 */
@NullMarked
package dev.reelproof.store;

import org.jspecify.annotations.NullMarked;
