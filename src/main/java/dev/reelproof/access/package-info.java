/**
 * Access as plain values and rules: who is calling, what each role may do, what an account, a session and a token are good for, and
 * what needs two persons.
 *
 * <p>Plain Java: knows no HTTP, no database, no framework and no other package of ours. {@code app.access} asks these rules,
 * {@code store.access} keeps the values, {@code api.access} finds out who is calling.
 */
@NullMarked
package dev.reelproof.access;

import org.jspecify.annotations.NullMarked;
