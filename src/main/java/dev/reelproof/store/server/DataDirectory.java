package dev.reelproof.store.server;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** PostgreSQL's data directory: made once, complete or not at all, with checksums on its pages and a password for its owner. */
final class DataDirectory {
    /** The database {@code postgres}, the last thing that the making of a data directory writes. */
    private static final String MADE_LAST = "base/5/PG_VERSION";

    private static final Duration LONGEST_COMMAND = Duration.ofMinutes(5);

    private final Path path;

    private DataDirectory(Path path) {
        this.path = path;
    }

    /** Where it is. */
    Path path() {
        return path;
    }

    /**
     * The data directory at a place, which is made when it is not there.
     *
     * <p>What an earlier version left half made is moved aside; it never held anything.
     *
     * @throws IOException when it cannot be made
     */
    static DataDirectory at(Path place, ServerPrograms programs, Passwords passwords) throws IOException {
        Stages.clear(place);
        if (Files.exists(place) && !isComplete(place)) {
            int n = 1;
            while (Files.exists(halfMade(place, n))) {
                n++;
            }
            Files.move(place, halfMade(place, n));
        }
        if (!Files.exists(place)) {
            Path stage = Stages.begin(place);
            make(stage, programs, passwords);
            Files.move(stage, place, StandardCopyOption.ATOMIC_MOVE);
        }
        DataFolder.makePrivate(place);
        return new DataDirectory(place);
    }

    private static Path halfMade(Path place, int number) {
        return place.resolveSibling(place.getFileName() + ".half-made-" + number);
    }

    private static boolean isComplete(Path place) {
        return Files.exists(place.resolve("global/pg_control")) && Files.exists(place.resolve(MADE_LAST));
    }

    private static void make(Path stage, ServerPrograms programs, Passwords passwords) throws IOException {
        Path word = stage.resolveSibling(stage.getFileName() + ".owner");
        passwords.keep(word);
        try {
            run(
                    programs.command(
                            "initdb",
                            List.of(
                                    "--pgdata=" + stage,
                                    "--username=" + EmbeddedDatabase.OWNER,
                                    // The first line of the file is the owner's.
                                    "--pwfile=" + word,
                                    "--auth=scram-sha-256",
                                    "--data-checksums",
                                    "--encoding=UTF8",
                                    // The same order and the same upper and lower case on every machine, whatever its
                                    // language.
                                    "--locale=C",
                                    "--locale-provider=builtin",
                                    "--builtin-locale=C.UTF-8")),
                    Optional.empty());
        } finally {
            Files.deleteIfExists(word);
        }
    }

    /**
     * Sets the owner's password while no server runs; a data directory of a version that asked for none gets it this way.
     *
     * @throws IOException when it cannot be set
     */
    void setOwnersPassword(ServerPrograms programs, Passwords passwords) throws IOException {
        run(
                programs.command("postgres", List.of("--single", "-D", path.toString(), "postgres")),
                Optional.of("alter role " + EmbeddedDatabase.OWNER + " password '" + passwords.owner() + "'\n"));
    }

    private static void run(List<String> command, Optional<String> input) throws IOException {
        Path said = Files.createTempFile("reelproof-database", ".txt");
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(said.toFile())
                    .start();
            try (var out = process.outputWriter()) {
                out.write(input.orElse(""));
            }
            if (!process.waitFor(LONGEST_COMMAND.toSeconds(), TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException("PostgreSQL's " + program(command) + " did not end within " + LONGEST_COMMAND);
            }
            if (process.exitValue() != 0) {
                throw new IOException("PostgreSQL's " + program(command) + " ended with code " + process.exitValue()
                        + ": " + Files.readString(said).strip());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("Interrupted while PostgreSQL's " + program(command) + " ran", e);
        } finally {
            Files.deleteIfExists(said);
        }
    }

    private static String program(List<String> command) {
        return command.stream()
                .map(word -> Path.of(word).getFileName().toString())
                .filter(word -> word.startsWith("initdb") || word.startsWith("postgres"))
                .findFirst()
                .orElse("command");
    }
}
