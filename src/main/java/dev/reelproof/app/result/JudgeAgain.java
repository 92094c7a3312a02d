package dev.reelproof.app.result;

import dev.reelproof.app.ConflictException;
import dev.reelproof.app.limits.LimitSets;
import dev.reelproof.app.limits.UncertaintyModels;
import dev.reelproof.correction.OutsideLawException;
import dev.reelproof.intake.result.NetworkDerivation;
import dev.reelproof.intake.result.ReadResult;
import dev.reelproof.intake.result.Upload;
import dev.reelproof.judgement.Judge;
import dev.reelproof.judgement.Judgement;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.result.JudgedUpload;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Judges a test as one of another product. It writes nothing, and takes a while: no transaction is to wait for it. */
@Singleton
public class JudgeAgain {
    private final ReadAgain readAgain;
    private final LimitSets limitSets;
    private final UncertaintyModels uncertaintyModels;
    private final String engine;

    JudgeAgain(
            ReadAgain readAgain,
            LimitSets limitSets,
            UncertaintyModels uncertaintyModels,
            @ConfigProperty(name = "quarkus.application.version") String engine) {
        this.readAgain = readAgain;
        this.limitSets = limitSets;
        this.uncertaintyModels = uncertaintyModels;
        this.engine = engine;
    }

    /**
     * A record's upload judged as a product, by the revisions that were in force on the day of its test.
     *
     * @param now when it is judged
     * @throws ConflictException when it cannot be judged so
     */
    public JudgedUpload as(TestRecord record, Product product, OffsetDateTime now) {
        Upload upload = readAgain.upload(record);
        ReadResult read = readAgain.read(record);
        LocalDate day =
                read.result().finished().atZoneSameInstant(ZoneOffset.UTC).toLocalDate();
        LimitSet limitSet = limitSets
                .current(product.limitSet(), day)
                .orElseThrow(() -> new ConflictException("Limit set " + product.limitSet() + " of product "
                        + product.id() + " had no revision in force on " + day + ", the day of the test."));
        ReadResult whole = NetworkDerivation.derive(read, product, limitSet);
        ReelResult result = whole.result();
        Optional<UncertaintyModel> model = uncertaintyModels.current(day);
        List<String> warnings = new ArrayList<>(whole.warnings());
        warnings.add("Judged again as product " + product.id() + ": the test is that of record " + record.id()
                + ", of product " + record.product().id() + ".");
        return new JudgedUpload(
                record.plant(),
                record.reel(),
                now,
                upload,
                result,
                product,
                limitSet,
                judge(result, product, limitSet, model),
                model,
                warnings,
                record.retestReason());
    }

    private Judgement judge(ReelResult result, Product product, LimitSet limitSet, Optional<UncertaintyModel> model) {
        try {
            return Judge.judge(result, product, limitSet, model, engine);
        } catch (OutsideLawException e) {
            throw new ConflictException("Limit set " + limitSet.id() + " cannot judge the test: " + e.getMessage());
        }
    }
}
