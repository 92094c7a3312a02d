package dev.reelproof.app.lot;

import dev.reelproof.access.Action;
import dev.reelproof.access.Callers;
import dev.reelproof.app.Plants;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.lot.LotCsv;
import dev.reelproof.intake.lot.ReportLines;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.InputStream;
import java.time.Clock;

/** Loads many lots at once; late, repeated and out-of-order reports are as good as others, and wrong ones do not stop the rest. */
@ApplicationScoped
public class LoadLots {
    private final AdmitLots admit;
    private final Plants plants;
    private final Callers callers;
    private final Clock clock;

    LoadLots(AdmitLots admit, Plants plants, Callers callers, Clock clock) {
        this.admit = admit;
        this.plants = plants;
        this.callers = callers;
        this.clock = clock;
    }

    /** How the reports are written. */
    public enum Format {
        /** One JSON report a line. */
        LINES,
        /** One row an input or sample, under named columns. */
        CSV
    }

    /**
     * Loads reports while they are read, as the current caller.
     *
     * @throws IntakeException when the columns of a CSV are not those of lots; nothing is kept
     * @throws LoadBrokeOffException when the load breaks off in the middle; the message says what is kept
     */
    public LoadResult load(InputStream reports, Format format) {
        callers.current().require(Action.REGISTER);
        LotLoad load = new LotLoad(admit, callers.current(), plants, clock);
        return load.load(
                switch (format) {
                    case LINES -> new ReportLines(reports);
                    case CSV -> new LotCsv(reports);
                });
    }
}
