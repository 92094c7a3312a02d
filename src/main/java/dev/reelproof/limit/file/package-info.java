/** Readers of the files in {@code limits/}: YAML checked by JSON Schema, then for sense. May use the limit model alone. */
package dev.reelproof.limit.file;
