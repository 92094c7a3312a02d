package dev.reelproof.intake;

import dev.reelproof.limit.LimitLibrary;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.limit.LimitSetException;
import dev.reelproof.limit.LimitSetException.Fault;
import dev.reelproof.limit.LimitSetReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URL;
import java.nio.charset.CharacterCodingException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

/** Loads the limit sets that the program ships with and those of the plant. */
public final class LimitFiles {
    private static final String FOLDER = "limits";
    private static final String KNOWN_FILE = FOLDER + "/category-6a-cable.yaml";
    private static final String SUFFIX = ".yaml";
    private static final String JAR_PREFIX = "jar:";
    private static final String IN_JAR = "!/";

    private final LimitSetReader reader;
    private final Map<String, LimitSet> sets = new LinkedHashMap<>();
    private final Map<String, String> fileOf = new LinkedHashMap<>();
    private final List<Fault> faults = new ArrayList<>();

    private LimitFiles(BiConsumer<String, Map<String, Double>> lawCheck) {
        reader = new LimitSetReader(lawCheck);
    }

    /**
     * All limit sets: {@code limits/*.yaml} of the class path, then those of the plant's own folder.
     *
     * @param ownFolder a folder of the plant's own sets; empty when it has none
     * @param lawCheck refuses an unknown correction law or coefficient, as for {@link LimitSetReader}
     * @throws LimitSetException with every fault of every file
     * @throws UncheckedIOException when a file or folder cannot be read
     */
    public static LimitLibrary load(Optional<Path> ownFolder, BiConsumer<String, Map<String, Double>> lawCheck) {
        LimitFiles files = new LimitFiles(lawCheck);
        files.readShipped();
        ownFolder.ifPresent(folder -> files.readFolder(folder, folder.toString()));
        if (!files.faults.isEmpty()) {
            throw new LimitSetException(files.faults);
        }
        return LimitLibrary.of(files.sets.values());
    }

    private void readShipped() {
        ClassLoader loader = Thread.currentThread().getContextClassLoader();
        URL known = (loader == null ? LimitFiles.class.getClassLoader() : loader).getResource(KNOWN_FILE);
        if (known == null) {
            throw new IllegalStateException("the program was packaged without " + KNOWN_FILE);
        }
        String address = known.toString();
        if (!address.startsWith(JAR_PREFIX)) {
            readFolder(Path.of(URI.create(address)).getParent(), FOLDER);
            return;
        }
        Path jar = Path.of(URI.create(address.substring(JAR_PREFIX.length(), address.lastIndexOf(IN_JAR))));
        try (FileSystem inJar = FileSystems.newFileSystem(jar)) {
            readFolder(inJar.getPath(FOLDER), FOLDER);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot open " + jar, e);
        }
    }

    private void readFolder(Path folder, String name) {
        try (Stream<Path> listed = Files.list(folder)) {
            List<Path> files = listed.filter(
                            file -> file.getFileName().toString().endsWith(SUFFIX))
                    .sorted()
                    .toList();
            for (Path file : files) {
                read(file, name + "/" + file.getFileName());
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the limit sets in " + folder, e);
        }
    }

    private void read(Path file, String name) throws IOException {
        try {
            LimitSet set = reader.read(name, Files.readString(file));
            String revision = set.id() + " revision " + set.revision();
            if (sets.putIfAbsent(revision, set) != null) {
                faults.add(new Fault(
                        name,
                        "this is " + revision + ", which " + fileOf.get(revision)
                                + " is already; give a changed set the next revision"));
            } else {
                fileOf.put(revision, name);
            }
        } catch (LimitSetException e) {
            faults.addAll(e.faults());
        } catch (CharacterCodingException e) {
            faults.add(new Fault(name, "the file is not text in UTF-8; save it as UTF-8"));
        }
    }
}
