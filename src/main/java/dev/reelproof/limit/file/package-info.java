/** Readers of the files in {@code limits/}: YAML checked by JSON Schema, then for sense. May use the limit model alone. */
@NullMarked
package dev.reelproof.limit.file;

import org.jspecify.annotations.NullMarked;
