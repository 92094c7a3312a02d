package dev.reelproof.genealogy;

import java.util.List;

/**
 * What shares a run or a machine's time.
 *
 * @param outputs the lots that were made in it
 * @param reels the reels that descend from them, themselves included
 * @param reelCount how many reels there are
 */
public record LotsTogether(List<Pedigree.Member> outputs, List<SharingReel> reels, int reelCount) {}
