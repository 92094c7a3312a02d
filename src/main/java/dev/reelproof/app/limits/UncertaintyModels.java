package dev.reelproof.app.limits;

import dev.reelproof.app.Settings;
import dev.reelproof.limit.UncertaintyLibrary;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.limit.file.UncertaintyFiles;
import dev.reelproof.store.limits.UncertaintyModelArchive;
import io.quarkus.runtime.Startup;
import jakarta.inject.Singleton;
import java.time.LocalDate;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The uncertainty model of this installation; it is loaded and checked before the service takes a request. */
@Startup
@Singleton
public class UncertaintyModels {
    private final UncertaintyLibrary library;
    private final String id;

    UncertaintyModels(Settings settings, UncertaintyModelArchive archive) {
        this.library = UncertaintyFiles.load(settings.limits());
        this.id = settings.uncertainty();
        if (library.all().stream().noneMatch(model -> model.id().equals(id))) {
            throw new IllegalStateException("reelproof.uncertainty names the uncertainty model '" + id
                    + "', which is not there; there are "
                    + library.all().stream().map(UncertaintyModel::id).collect(Collectors.toCollection(TreeSet::new)));
        }
        library.all().forEach(archive::requireUnchanged);
    }

    /** The revision of the model that is in force on a day; empty when there is none yet. */
    public Optional<UncertaintyModel> current(LocalDate day) {
        return library.current(id, day);
    }
}
