package dev.reelproof.app.result;

import dev.reelproof.app.NothingThereException;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.app.limits.UncertaintyModels;
import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.intake.reel.ProductFit;
import dev.reelproof.intake.result.NetworkDerivation;
import dev.reelproof.intake.result.ReadResult;
import dev.reelproof.intake.result.ResultReader;
import dev.reelproof.judgement.Judge;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.quantity.Length;
import dev.reelproof.store.reel.Products;
import dev.reelproof.store.reel.Reels;
import dev.reelproof.store.reel.RegisteredReel;
import dev.reelproof.store.result.JudgedUpload;
import dev.reelproof.store.result.Records;
import dev.reelproof.store.result.Records.Taken;
import dev.reelproof.store.result.StoredRecord;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Takes a result: read, check against what the reel is meant to be, judge, keep. */
@Singleton
public class TakeResult {
    private static final double LENGTHS_MAY_DIFFER = 0.02;
    private static final double PERCENT = 100;

    private final Reels reels;
    private final Products products;
    private final LimitSets limitSets;
    private final UncertaintyModels uncertaintyModels;
    private final Records archive;
    private final String engine;

    TakeResult(
            Reels reels,
            Products products,
            LimitSets limitSets,
            UncertaintyModels uncertaintyModels,
            Records archive,
            @ConfigProperty(name = "quarkus.application.version") String engine) {
        this.reels = reels;
        this.products = products;
        this.limitSets = limitSets;
        this.uncertaintyModels = uncertaintyModels;
        this.archive = archive;
        this.engine = engine;
    }

    /**
     * Takes an upload of a reel; one that was taken before gives its first record.
     *
     * @throws NothingThereException when the reel is not registered
     * @throws IntakeException when the upload cannot be taken; nothing of it is kept
     */
    public Taken take(String plant, String reelNumber, Upload upload, OffsetDateTime received) {
        RegisteredReel reel = reels.byId(plant, reelNumber)
                .orElseThrow(() -> new NothingThereException("Reel '" + reelNumber + "' is not registered at plant "
                        + plant + "; register it with PUT /api/v1/reels/" + reelNumber + " first."));
        Optional<StoredRecord> before = archive.ofUpload(plant, reel.id(), upload.sha256());
        if (before.isPresent()) {
            return new Taken(before.get(), false);
        }
        ReadResult read = ResultReader.read(upload, received);
        Product product = products.byId(plant, reel.product()).orElseThrow();
        ProductFit.check(read.result(), product).refuseIfAny();
        LimitSet limitSet = limitSetFor(product, read.result());
        ReadResult whole = NetworkDerivation.derive(read, product, limitSet);
        ReelResult result = whole.result();
        Optional<UncertaintyModel> uncertaintyModel = uncertaintyModels.current(day(result));
        List<String> warnings = new ArrayList<>(whole.warnings());
        lengthWarning(reel.length(), result.length()).ifPresent(warnings::add);
        return archive.take(new JudgedUpload(
                plant,
                reel.id(),
                received,
                upload,
                result,
                product,
                limitSet,
                judge(result, product, limitSet, uncertaintyModel),
                uncertaintyModel,
                warnings));
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
            throw IntakeException.of(IntakeException.Kind.CONTENT, "/temperature", e.getMessage());
        }
    }

    private static Optional<String> lengthWarning(Length registered, Length measured) {
        double difference = (measured.metres() - registered.metres()) / registered.metres();
        if (Math.abs(difference) <= LENGTHS_MAY_DIFFER) {
            return Optional.empty();
        }
        return Optional.of("The measured length, " + measured.metres() + " m, differs from the registered one, "
                + registered.metres() + " m, by more than " + Math.round(LENGTHS_MAY_DIFFER * PERCENT) + " %.");
    }
}
