package dev.reelproof.genealogy;

import org.jspecify.annotations.Nullable;

/**
 * A reel and what is registered of it.
 *
 * @param lot the reel
 * @param order the registered order; null when there is none
 * @param customer the registered customer; null when there is none
 */
public record SharingReel(Pedigree.Member lot, @Nullable String order, @Nullable String customer) {}
