package dev.reelproof.app.limits;

import dev.reelproof.app.Settings;
import dev.reelproof.correction.Laws;
import dev.reelproof.limit.Constructions;
import dev.reelproof.limit.LimitLibrary;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.file.ConstructionFiles;
import dev.reelproof.limit.file.LimitFiles;
import dev.reelproof.limit.file.LimitSetReader;
import dev.reelproof.measurement.Product;
import dev.reelproof.record.TestRecord;
import dev.reelproof.store.limits.LimitSetArchive;
import io.quarkus.runtime.Startup;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The limit sets of this installation; they are loaded and checked before the service takes a request. */
@Startup
@Singleton
public class LimitSets {
    private final LimitLibrary library;
    private final Constructions constructions;
    private final LimitSetArchive archive;

    LimitSets(Settings settings, LimitSetArchive archive) {
        this.archive = archive;
        this.library = LimitFiles.load(settings.limits(), Laws::named);
        this.constructions = ConstructionFiles.load(
                settings.limits(), library.all().stream().map(LimitSet::id).collect(Collectors.toUnmodifiableSet()));
        library.all().forEach(archive::requireUnchanged);
    }

    /** Every revision of every set. */
    public List<LimitSet> all() {
        return library.all();
    }

    /** The revision of a set that is in force on a day; empty when there is none. */
    public Optional<LimitSet> current(String id, LocalDate day) {
        return library.current(id, day);
    }

    /** One revision of a set; empty when there is none. */
    public Optional<LimitSet> revision(String id, int revision) {
        return library.revision(id, revision);
    }

    /** The other sets that grade the construction of a product, in the revisions that are in force on a day. */
    public List<LimitSet> othersOf(String id, Product product, LocalDate day) {
        return constructions.othersOf(id, product.gauge()).stream()
                .flatMap(other -> library.current(other, day).stream())
                .toList();
    }

    /** The limit set that a record was judged by, as it was then, even when its file is gone. */
    public LimitSet of(TestRecord record) {
        String id = record.judgement().limitSet();
        int revision = record.judgement().revision();
        return library.revision(id, revision)
                .filter(set -> set.sha256().equals(record.judgement().limitSetSha256()))
                .or(() -> archive.text(id, revision)
                        .map(text -> new LimitSetReader(Laws::named).read(id + " revision " + revision, text)))
                .orElseThrow(() -> new IllegalStateException(
                        "limit set " + id + " revision " + revision + " of record " + record.id() + " is not kept"));
    }
}
