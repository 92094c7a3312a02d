package dev.reelproof.app.result;

import dev.reelproof.app.ConflictException;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.app.limits.UncertaintyModels;
import dev.reelproof.intake.result.NetworkDerivation;
import dev.reelproof.intake.result.ReadResult;
import dev.reelproof.judgement.advice.Alternatives;
import dev.reelproof.record.TestRecord;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** Answers what else a tested reel could be. It writes nothing. */
@Singleton
public class AdviseOnFailure {
    private final ReadRecords readRecords;
    private final ReadAgain readAgain;
    private final LimitSets limitSets;
    private final UncertaintyModels uncertaintyModels;
    private final String engine;

    AdviseOnFailure(
            ReadRecords readRecords,
            ReadAgain readAgain,
            LimitSets limitSets,
            UncertaintyModels uncertaintyModels,
            @ConfigProperty(name = "quarkus.application.version") String engine) {
        this.readRecords = readRecords;
        this.readAgain = readAgain;
        this.limitSets = limitSets;
        this.uncertaintyModels = uncertaintyModels;
        this.engine = engine;
    }

    /**
     * What a tested reel could be.
     *
     * @param judged the record of its test, with what it was judged by
     * @param alternatives what else it could be
     */
    public record Advice(JudgedRecord judged, Alternatives alternatives) {}

    /**
     * What a tested reel could be, by the revisions that were in force on the day of its test.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param id the record's id, as it stands in the address
     * @throws NothingThereException when the plant has no such record
     * @throws ConflictException when its upload cannot be read by this version of the program
     */
    public Advice advise(@Nullable String plantNamed, String id) {
        JudgedRecord judged = readRecords.record(plantNamed, id);
        TestRecord record = judged.record();
        ReadResult read = readAgain.read(record);
        LocalDate day =
                read.result().finished().atZoneSameInstant(ZoneOffset.UTC).toLocalDate();
        return new Advice(
                judged,
                Alternatives.of(
                        set -> NetworkDerivation.derive(read, record.product(), set)
                                .result(),
                        record.product(),
                        record.judgement(),
                        judged.limitSet(),
                        limitSets.othersOf(record.judgement().limitSet(), record.product(), day),
                        uncertaintyModels.current(day),
                        engine));
    }
}
