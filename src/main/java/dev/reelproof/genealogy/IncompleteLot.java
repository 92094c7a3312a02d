package dev.reelproof.genealogy;

import java.time.OffsetDateTime;
import java.util.List;

/** A lot of which not all inputs can have been reported, with the kinds that lack. */
public record IncompleteLot(LotId lot, LotKind kind, OffsetDateTime made, List<String> missing) {}
