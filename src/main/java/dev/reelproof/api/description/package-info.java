/**
 * The API's description of itself at {@code /q/openapi}: what the routes' own annotations do not say is added here, at build
 * time, in one place for all of them.
 *
 * <p>Uses {@code api} alone.
 */
@NullMarked
package dev.reelproof.api.description;

import org.jspecify.annotations.NullMarked;
