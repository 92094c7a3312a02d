package dev.reelproof.store.server;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import org.jspecify.annotations.Nullable;

/** Folders in which something is made before it takes its place. */
final class Stages {
    private static final String MARK = ".unfinished-";

    private Stages() {}

    /** A new empty folder beside the place that it will take, for the program's own account alone. */
    static Path begin(Path place) throws IOException {
        return Files.createTempDirectory(place.toAbsolutePath().getParent(), place.getFileName() + MARK);
    }

    /** Removes what starts that were killed left unfinished beside a place. */
    static void clear(Path place) throws IOException {
        try (DirectoryStream<Path> left =
                Files.newDirectoryStream(place.toAbsolutePath().getParent(), place.getFileName() + MARK + "*")) {
            for (Path stage : left) {
                remove(stage);
            }
        }
    }

    private static void remove(Path folder) throws IOException {
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path emptied, @Nullable IOException failure) throws IOException {
                if (failure != null) {
                    throw failure;
                }
                Files.delete(emptied);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
