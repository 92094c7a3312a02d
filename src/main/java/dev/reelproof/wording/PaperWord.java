package dev.reelproof.wording;

import java.util.Locale;

/** What a certificate says around its figures: labels, headings and standing sentences, each under its key in the catalogue. */
public enum PaperWord {
    ISSUE,
    CUSTOMER,
    CONSIGNEE,
    ORDER,
    REEL,
    PRODUCT,
    DESCRIPTION,
    CONDUCTORS,
    ONE_PAIR,
    PAIRS,
    LENGTH,
    LENGTH_MARKS,
    MARKS,
    LIMIT_SET,
    METHOD,
    METHODS,
    REVISION,
    REFERRED_TO,
    REFERENCE,
    TESTED,
    PERIOD,
    CABLE_AT,
    BAY,
    TECHNICIAN,
    INSTRUMENTS,
    CALIBRATED,
    CALIBRATION_NOT_NEEDED,
    STATEMENT,
    BY_CONCESSION,
    TESTED_BY,
    AUTHORISED,
    SIGNATURE,
    DATE,
    RESULTS,
    REQUIREMENT,
    LIMIT,
    VALUE,
    LIMIT_THERE,
    MARGIN,
    UNIT,
    WHERE,
    RESULT,
    VALUES,
    NOTES,
    RELATES_TO,
    READING,
    ROUNDING,
    NOT_JUDGED,
    DIGESTS,
    VERIFY_AT,
    ATTACHED,
    SIGNED,
    SIGNED_DEMO,
    CURVES,
    CURVES_READING,
    ALL_SWEEPS,
    ONE_SWEEP,
    WORST_SWEEP,
    LEAST_MARGIN,
    FIGURE,
    DISTRIBUTIONS,
    DISTRIBUTIONS_READING,
    COUNT,
    WORST_PAIRS,
    WORST_PAIRS_READING,
    RUNNING_HEAD,
    FOOT,
    PAGE,
    END;

    /** Its key in the catalogue. */
    String key() {
        return "paper." + word();
    }

    private String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
