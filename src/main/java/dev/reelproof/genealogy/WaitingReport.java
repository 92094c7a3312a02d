package dev.reelproof.genealogy;

import java.time.OffsetDateTime;
import java.util.List;

/** A report that waits, and for what. */
public record WaitingReport(LotId lot, LotKind kind, OffsetDateTime received, List<LotId> missing) {}
