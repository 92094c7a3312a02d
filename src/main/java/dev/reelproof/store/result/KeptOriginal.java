package dev.reelproof.store.result;

/**
 * A part of an upload that was kept as received.
 *
 * @param ordinal its place in the upload, from 0
 * @param name its file or part name
 * @param mediaType as sent
 * @param sha256 digest of its bytes, hexadecimal
 * @param size how many bytes it has
 */
public record KeptOriginal(int ordinal, String name, String mediaType, String sha256, int size) {}
