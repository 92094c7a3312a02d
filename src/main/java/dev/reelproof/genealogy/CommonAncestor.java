package dev.reelproof.genealogy;

/**
 * An ancestor of several reels.
 *
 * @param lot the ancestor
 * @param reels from how many of them it is reached; a reel counts once, however many ways lead to it
 */
public record CommonAncestor(Pedigree.Member lot, int reels) {}
