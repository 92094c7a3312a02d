package dev.reelproof.intake.reel;

import dev.reelproof.intake.Faults;
import dev.reelproof.intake.Words;
import dev.reelproof.intake.result.StatedReel;
import dev.reelproof.record.ScannedCode;
import java.util.List;

/** Whether a result is of the reel to whose address it was sent. */
public final class ReelFit {
    private ReelFit() {}

    /**
     * What does not fit; empty when all does.
     *
     * @param stated the reels that the parts of the result name, as scanned or typed at the bay
     * @param reel the number of the reel that the result was sent to
     * @param isRequired whether the result must name its reel
     */
    public static Faults check(List<StatedReel> stated, String reel, boolean isRequired) {
        Faults faults = new Faults();
        for (StatedReel one : stated) {
            String number = ScannedCode.of(one.number());
            if (!number.equals(reel)) {
                faults.add(
                        one.where(),
                        "the result is of reel " + Words.quoted(number) + ", but was sent for reel "
                                + Words.quoted(reel) + "; nothing was kept: open the right reel, or test this one");
            }
        }
        if (stated.isEmpty() && isRequired) {
            faults.add(
                    "/reel",
                    "'reel' is missing; it must be the number of the reel that was on the bench, " + Words.quoted(reel)
                            + " if it was this one");
        }
        return faults;
    }
}
