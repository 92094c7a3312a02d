package dev.reelproof.app.certificate;

import dev.reelproof.app.Plants;
import dev.reelproof.certificate.Circumstances;
import dev.reelproof.certificate.Declaration;
import dev.reelproof.record.AttemptHistory;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.result.AttemptHistories;
import dev.reelproof.wording.Catalogue;
import dev.reelproof.wording.Wording;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import org.jspecify.annotations.Nullable;

/** Finds out what a certificate must say of a reel beside its newest record, in the language of the plant's certificates. */
@ApplicationScoped
class FindCircumstances {
    private final AttemptHistories histories;
    private final Plants plants;

    FindCircumstances(AttemptHistories histories, Plants plants) {
        this.histories = histories;
        this.plants = plants;
    }

    /** What must be said of the reel of a record that may be certified. */
    @Transactional(Transactional.TxType.MANDATORY)
    Circumstances of(MayBeCertified.Certifiable certifiable) {
        return new Circumstances(tests(certifiable.record()), certifiable.standing(), null);
    }

    /** What the tests of the reel came to; null where this was the first, or where the plant does not print it. */
    private @Nullable String tests(TestRecord record) {
        AttemptHistory history = histories.of(record.plant(), record.reel());
        Declaration declaration = plants.declaration(record.plant());
        return plants.printsRetests(record.plant())
                        && !history.before(record.id()).isEmpty()
                ? Wording.of(Catalogue.of(declaration.language()))
                        .attempt(history, record.id(), false)
                        .summary()
                : null;
    }
}
