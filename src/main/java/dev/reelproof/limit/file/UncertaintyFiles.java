package dev.reelproof.limit.file;

import dev.reelproof.limit.UncertaintyLibrary;
import dev.reelproof.limit.UncertaintyModel;
import dev.reelproof.limit.file.LimitSetException.Fault;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Loads the uncertainty models that the program ships with and those of the plant, which replace the shipped of the same id. */
public final class UncertaintyFiles {
    private static final String WHAT = "uncertainty models";
    private static final String SUBFOLDER = "uncertainty";
    private static final String FOLDER = "limits/" + SUBFOLDER;
    private static final String KNOWN_FILE = "test-bay.yaml";

    private final UncertaintyModelReader reader = new UncertaintyModelReader();
    private final Map<String, UncertaintyModel> models = new LinkedHashMap<>();
    private final Map<String, String> fileOf = new LinkedHashMap<>();
    private final List<Fault> faults = new ArrayList<>();

    private UncertaintyFiles() {}

    /**
     * All uncertainty models: {@code limits/uncertainty/*.yaml} of the class path, then {@code uncertainty/*.yaml} below the plant's
     * own folder of limit sets, where there is such a folder.
     *
     * @param ownFolder the folder of the plant's own limit sets; empty when it has none
     * @throws LimitSetException with every fault of every file
     * @throws UncheckedIOException when a file or folder cannot be read
     */
    public static UncertaintyLibrary load(Optional<Path> ownFolder) {
        UncertaintyFiles shipped = new UncertaintyFiles();
        YamlFolder.readShipped(WHAT, FOLDER, KNOWN_FILE, shipped::read);
        UncertaintyFiles own = new UncertaintyFiles();
        ownFolder
                .map(folder -> folder.resolve(SUBFOLDER))
                .filter(Files::isDirectory)
                .ifPresent(folder -> YamlFolder.read(WHAT, folder, folder.toString(), own::read));
        List<Fault> faults = new ArrayList<>(shipped.faults);
        faults.addAll(own.faults);
        if (!faults.isEmpty()) {
            throw new LimitSetException(faults);
        }
        List<UncertaintyModel> all = new ArrayList<>(own.models.values());
        shipped.models.values().stream()
                .filter(model ->
                        own.models.values().stream().noneMatch(one -> one.id().equals(model.id())))
                .forEach(all::add);
        return UncertaintyLibrary.of(all);
    }

    private void read(Path file, String name) throws IOException {
        try {
            UncertaintyModel model = reader.read(name, Files.readString(file));
            if (models.putIfAbsent(model.words(), model) != null) {
                faults.add(new Fault(
                        name,
                        "this is " + model.words() + ", which " + fileOf.get(model.words())
                                + " is already; give a changed model the next revision"));
            } else {
                fileOf.put(model.words(), name);
            }
        } catch (LimitSetException e) {
            faults.addAll(e.faults());
        } catch (CharacterCodingException e) {
            faults.add(new Fault(name, "the file is not text in UTF-8; save it as UTF-8"));
        }
    }
}
