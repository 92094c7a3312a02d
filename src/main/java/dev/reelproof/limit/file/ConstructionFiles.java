package dev.reelproof.limit.file;

import dev.reelproof.limit.Construction;
import dev.reelproof.limit.Constructions;
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
import java.util.Set;

/** Loads the constructions that the program ships with and those of the plant. */
public final class ConstructionFiles {
    private static final String SUBFOLDER = "constructions";
    private static final String FOLDER = "limits/" + SUBFOLDER;
    private static final String KNOWN_FILE = "four-pair-unscreened.yaml";

    private final ConstructionReader reader;
    private final Map<String, Construction> constructions = new LinkedHashMap<>();
    private final Map<String, String> fileOf = new LinkedHashMap<>();
    private final List<Fault> faults = new ArrayList<>();

    private ConstructionFiles(Set<String> limitSets) {
        reader = new ConstructionReader(limitSets);
    }

    /**
     * All constructions: {@code limits/constructions/*.yaml} of the class path, then those in {@code constructions} of the plant's own
     * folder.
     *
     * @param ownFolder the plant's own folder of limit sets; empty when it has none
     * @param limitSets the ids of all limit sets
     * @throws LimitSetException with every fault of every file
     * @throws UncheckedIOException when a file or folder cannot be read
     */
    public static Constructions load(Optional<Path> ownFolder, Set<String> limitSets) {
        ConstructionFiles files = new ConstructionFiles(limitSets);
        YamlFolder.readShipped(SUBFOLDER, FOLDER, KNOWN_FILE, files::read);
        ownFolder
                .map(folder -> folder.resolve(SUBFOLDER))
                .filter(Files::isDirectory)
                .ifPresent(folder -> YamlFolder.read(SUBFOLDER, folder, folder.toString(), files::read));
        if (!files.faults.isEmpty()) {
            throw new LimitSetException(files.faults);
        }
        return new Constructions(List.copyOf(files.constructions.values()));
    }

    private void read(Path file, String name) throws IOException {
        try {
            Construction construction = reader.read(name, Files.readString(file));
            if (constructions.putIfAbsent(construction.id(), construction) != null) {
                faults.add(new Fault(
                        name,
                        "this is the construction " + construction.id() + ", which " + fileOf.get(construction.id())
                                + " is already; give it an id of its own: a limit set may stand in several"));
            } else {
                fileOf.put(construction.id(), name);
            }
        } catch (LimitSetException e) {
            faults.addAll(e.faults());
        } catch (CharacterCodingException e) {
            faults.add(new Fault(name, "the file is not text in UTF-8; save it as UTF-8"));
        }
    }
}
