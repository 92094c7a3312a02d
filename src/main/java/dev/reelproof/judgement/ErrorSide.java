package dev.reelproof.judgement;

import dev.reelproof.limit.InstrumentUncertainty;
import dev.reelproof.limit.LevelSide;

/**
 * On which side of a value the true one is asked for. For a value that passes it is the side where the limit is missed, for one that
 * fails the side where it is met. Only a level in dB has unlike sides.
 */
enum ErrorSide {
    OF_A_PASS,
    OF_A_FAIL;

    /** The side that matters at a margin; a value on the limit passes. */
    static ErrorSide at(double margin) {
        return margin >= 0 ? OF_A_PASS : OF_A_FAIL;
    }

    LevelSide of(InstrumentUncertainty uncertainty) {
        LevelSide ofAPass = uncertainty.side().orElse(LevelSide.LOWER);
        return this == OF_A_PASS ? ofAPass : ofAPass.other();
    }
}
