package dev.reelproof.app.result;

import dev.reelproof.app.ConflictException;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.result.ReadResult;
import dev.reelproof.intake.result.ResultReader;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.result.Records;
import jakarta.inject.Singleton;

/** Reads a record's upload again, as it was received: nothing else holds all that was measured, with its units and places. */
@Singleton
class ReadAgain {
    private final Records records;

    ReadAgain(Records records) {
        this.records = records;
    }

    /** The upload of a record. */
    Upload upload(TestRecord record) {
        return records.upload(record.plant(), record.id()).orElseThrow();
    }

    /**
     * What a record's upload says.
     *
     * @throws ConflictException when it cannot be read by this version of the program
     */
    ReadResult read(TestRecord record) {
        try {
            return ResultReader.read(upload(record), record.received());
        } catch (IntakeException e) {
            throw new ConflictException("The upload of record " + record.id()
                    + " cannot be read by this version of the program, so nothing can be said of what else the reel could be: "
                    + e.getMessage());
        }
    }
}
