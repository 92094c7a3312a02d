package dev.reelproof.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URL;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Stream;

/**
 * A folder of YAML files that the program ships with, and its counterpart in the plant's own folder.
 *
 * @param below the folder within {@code limits/}, and within the plant's own; empty for these themselves
 */
record YamlFolder(String below) {
    /** The limit sets. */
    static final YamlFolder LIMITS = new YamlFolder("");
    /** What a file is told that cannot be read as text. */
    static final String NOT_UTF_8 = "the file is not text in UTF-8; save it as UTF-8";

    private static final String SHIPPED = "limits";
    private static final String KNOWN_FILE = SHIPPED + "/category-6a-cable.yaml";
    private static final String SUFFIX = ".yaml";
    private static final String JAR_PREFIX = "jar:";
    private static final String IN_JAR = "!/";

    /**
     * Reads the shipped files, then the plant's, each folder in the order of its names.
     *
     * @param ownFolder the plant's own folder; empty when it has none
     * @param each is given a file's name for messages, and its bytes
     * @throws UncheckedIOException when a file or folder cannot be read
     */
    void read(Optional<Path> ownFolder, BiConsumer<String, byte[]> each) {
        readShipped(each);
        ownFolder.ifPresent(own -> readFolder(own, own.toString(), each));
    }

    /**
     * The text of a file.
     *
     * @throws CharacterCodingException when it is not UTF-8
     */
    static String text(byte[] bytes) throws CharacterCodingException {
        return StandardCharsets.UTF_8
                .newDecoder()
                .decode(ByteBuffer.wrap(bytes))
                .toString();
    }

    private void readShipped(BiConsumer<String, byte[]> each) {
        ClassLoader loader = Thread.currentThread().getContextClassLoader();
        URL known = (loader == null ? YamlFolder.class.getClassLoader() : loader).getResource(KNOWN_FILE);
        if (known == null) {
            throw new IllegalStateException("the program was packaged without " + KNOWN_FILE);
        }
        String address = known.toString();
        if (!address.startsWith(JAR_PREFIX)) {
            readFolder(Path.of(URI.create(address)).getParent(), SHIPPED, each);
            return;
        }
        Path jar = Path.of(URI.create(address.substring(JAR_PREFIX.length(), address.lastIndexOf(IN_JAR))));
        try (FileSystem inJar = FileSystems.newFileSystem(jar)) {
            readFolder(inJar.getPath(SHIPPED), SHIPPED, each);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot open " + jar, e);
        }
    }

    /** A folder below need not be there; the one itself must. */
    private void readFolder(Path limits, String name, BiConsumer<String, byte[]> each) {
        Path folder = below.isEmpty() ? limits : limits.resolve(below);
        if (!below.isEmpty() && !Files.isDirectory(folder)) {
            return;
        }
        try (Stream<Path> listed = Files.list(folder)) {
            List<Path> files = listed.filter(
                            file -> file.getFileName().toString().endsWith(SUFFIX))
                    .sorted()
                    .toList();
            for (Path file : files) {
                each.accept(
                        name + "/" + (below.isEmpty() ? "" : below + "/") + file.getFileName(),
                        Files.readAllBytes(file));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "cannot read the " + (below.isEmpty() ? "limit sets" : below) + " in " + folder, e);
        }
    }
}
