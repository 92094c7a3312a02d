package dev.reelproof.genealogy.admission;

import dev.reelproof.genealogy.LotId;
import java.time.OffsetDateTime;

/**
 * A report that had waited and turned out wrong.
 *
 * @param reportJson the report as the HTTP contract shapes it
 */
public record RefusedReport(
        LotId lot, OffsetDateTime received, OffsetDateTime refused, String reason, String reportJson) {}
