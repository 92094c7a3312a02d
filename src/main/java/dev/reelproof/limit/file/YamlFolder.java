package dev.reelproof.limit.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** The YAML files of a folder, in the order of their names: on the class path, be it a folder or a jar, or of the plant's own. */
final class YamlFolder {
    private static final String SUFFIX = ".yaml";
    private static final String JAR_PREFIX = "jar:";
    private static final String IN_JAR = "!/";

    private YamlFolder() {}

    /** Takes one file. */
    interface Reader {
        void read(Path file, String name) throws IOException;
    }

    /**
     * Reads the files that the program ships with.
     *
     * @param what they hold, for messages
     * @param folder on the class path, without a slash at its end
     * @param knownFile a file in it that is surely there
     * @throws UncheckedIOException when a file or folder cannot be read
     */
    static void readShipped(String what, String folder, String knownFile, Reader reader) {
        ClassLoader loader = Thread.currentThread().getContextClassLoader();
        String known = folder + "/" + knownFile;
        URL found = (loader == null ? YamlFolder.class.getClassLoader() : loader).getResource(known);
        if (found == null) {
            throw new IllegalStateException("the program was packaged without " + known);
        }
        String address = found.toString();
        if (!address.startsWith(JAR_PREFIX)) {
            Path parent =
                    Objects.requireNonNull(Path.of(URI.create(address)).getParent(), "a shipped file lies in a folder");
            read(what, parent, folder, reader);
            return;
        }
        Path jar = Path.of(URI.create(address.substring(JAR_PREFIX.length(), address.lastIndexOf(IN_JAR))));
        try (FileSystem inJar = FileSystems.newFileSystem(jar)) {
            read(what, inJar.getPath(folder), folder, reader);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot open " + jar, e);
        }
    }

    /**
     * Reads the files of a folder.
     *
     * @param what they hold, for messages
     * @param name of the folder, for messages
     * @throws UncheckedIOException when a file or the folder cannot be read
     */
    static void read(String what, Path folder, String name, Reader reader) {
        try (Stream<Path> listed = Files.list(folder)) {
            List<Path> files = listed.filter(
                            file -> file.getFileName().toString().endsWith(SUFFIX))
                    .sorted()
                    .toList();
            for (Path file : files) {
                reader.read(file, name + "/" + file.getFileName());
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read the " + what + " in " + folder, e);
        }
    }
}
