package dev.reelproof.app.result;

import dev.reelproof.access.Action;
import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.Plants;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.app.limits.UncertaintyModels;
import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.reel.ProductFit;
import dev.reelproof.intake.reel.ReelFit;
import dev.reelproof.intake.result.NetworkDerivation;
import dev.reelproof.intake.result.ReadResult;
import dev.reelproof.intake.result.ResultReader;
import dev.reelproof.intake.result.SentTest;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.judgement.Judge;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.LengthAgreement;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.record.RegisteredReel;
import dev.reelproof.record.ScannedCode;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.reel.Products;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.result.JudgedUpload;
import dev.reelproof.store.result.Records;
import dev.reelproof.store.result.Records.Taken;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;

/** Takes a result: read, check against what the reel is meant to be, judge, keep. */
@Singleton
public class TakeResult {
    private final Plants plants;
    private final Reels reels;
    private final Products products;
    private final LimitSets limitSets;
    private final UncertaintyModels uncertaintyModels;
    private final Records records;
    private final KeepRecord keepRecord;
    private final JudgedRecords judgedRecords;
    private final TestRules rules;
    private final Clock clock;
    private final String engine;

    TakeResult(
            Plants plants,
            Reels reels,
            Products products,
            LimitSets limitSets,
            UncertaintyModels uncertaintyModels,
            Records records,
            KeepRecord keepRecord,
            JudgedRecords judgedRecords,
            TestRules rules,
            Clock clock,
            @ConfigProperty(name = "quarkus.application.version") String engine) {
        this.plants = plants;
        this.reels = reels;
        this.products = products;
        this.limitSets = limitSets;
        this.uncertaintyModels = uncertaintyModels;
        this.records = records;
        this.keepRecord = keepRecord;
        this.judgedRecords = judgedRecords;
        this.rules = rules;
        this.clock = clock;
        this.engine = engine;
    }

    /**
     * What came of a result.
     *
     * @param judged its record
     * @param first false when the same upload had been taken before, whose record this is
     */
    public record TakenResult(JudgedRecord judged, boolean first) {}

    /**
     * Takes an upload of a reel; one that was taken before gives its first record.
     *
     * @param plantNamed the plant; the caller's when none is named
     * @param scanned the reel's number, as scanned or typed
     * @param sent gives the upload; asked only once the caller may upload
     * @throws NothingThereException when the reel is not registered
     * @throws IntakeException when the upload cannot be taken; nothing of it is kept
     */
    public TakenResult take(@Nullable String plantNamed, String scanned, Supplier<SentTest> sent) {
        String plant = plants.forAction(Action.UPLOAD, plantNamed, "plant");
        SentTest test = sent.get();
        Upload upload = test.upload();
        String reelNumber = ScannedCode.of(scanned);
        OffsetDateTime received = OffsetDateTime.now(clock);
        RegisteredReel reel = reels.byId(plant, reelNumber)
                .orElseThrow(() -> new NothingThereException("Reel '" + reelNumber + "' is not registered at plant "
                        + plant + "; register it with PUT /api/v1/reels/" + reelNumber + " first."));
        Taken taken = records.ofUpload(plant, reel.id(), upload.sha256())
                .map(before -> new Taken(before, false))
                .orElseGet(() -> keepRecord.keep(judged(reel, test, received)));
        TestRecord record = taken.record();
        return new TakenResult(judgedRecords.of(record), taken.first());
    }

    private JudgedUpload judged(RegisteredReel reel, SentTest test, OffsetDateTime received) {
        ReadResult read = ResultReader.read(test.upload(), received);
        ReelFit.check(read.reels(), reel.id(), rules.requiresReel(reel.plant())).refuseIfAny();
        Product product = products.byId(reel.plant(), reel.product()).orElseThrow();
        ProductFit.check(read.result(), product).refuseIfAny();
        LimitSet limitSet = limitSetFor(product, read.result());
        ReadResult whole = NetworkDerivation.derive(read, product, limitSet);
        ReelResult result = whole.result();
        Optional<UncertaintyModel> uncertaintyModel = uncertaintyModels.current(day(result));
        List<String> warnings = new ArrayList<>(whole.warnings());
        LengthAgreement.warning(reel.length(), result.length()).ifPresent(warnings::add);
        return new JudgedUpload(
                reel.plant(),
                reel.id(),
                received,
                test.upload(),
                result,
                product,
                limitSet,
                judge(result, product, limitSet, uncertaintyModel),
                uncertaintyModel,
                warnings,
                test.retestReason() != null ? test.retestReason() : read.retestReason());
    }

    private LimitSet limitSetFor(Product product, ReelResult result) {
        LocalDate day = day(result);
        return limitSets
                .current(product.limitSet(), day)
                .orElseThrow(() -> IntakeException.of(
                        IntakeException.Kind.CONTENT,
                        "/product",
                        "limit set " + product.limitSet() + " of product " + product.id()
                                + " has no revision in force on " + day
                                + "; check the time of the test and the product's limitSet"));
    }

    private static LocalDate day(ReelResult result) {
        return result.finished().atZoneSameInstant(ZoneOffset.UTC).toLocalDate();
    }

    private Judgement judge(
            ReelResult result, Product product, LimitSet limitSet, Optional<UncertaintyModel> uncertaintyModel) {
        try {
            return Judge.judge(result, product, limitSet, uncertaintyModel, engine);
        } catch (OutsideLawException e) {
            throw IntakeException.of(IntakeException.Kind.CONTENT, "/temperature", e);
        }
    }
}
