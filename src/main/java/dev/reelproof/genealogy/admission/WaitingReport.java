package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.LotId;
import dev.reelproof.genealogy.LotKind;
import java.time.OffsetDateTime;
import java.util.List;

/** A report that waits, and for what. */
public record WaitingReport(LotId lot, LotKind kind, OffsetDateTime received, List<LotId> missing) {}
