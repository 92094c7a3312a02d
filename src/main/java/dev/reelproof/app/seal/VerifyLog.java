package dev.reelproof.app.seal;

import dev.reelproof.seal.PublicSealKey;
import dev.reelproof.store.seal.CheckedDatabase;
import dev.reelproof.store.seal.HeadsFile;
import dev.reelproof.store.seal.LogCheck;
import dev.reelproof.store.seal.SealKeyFile;
import io.smallrye.config.PropertiesConfigSource;
import io.smallrye.config.SmallRyeConfig;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Properties;

/**
 * The command that checks a whole database against its log, without the service: it needs the settings of the database, the log's public
 * key and the heads outside, from the same settings as the service.
 */
public final class VerifyLog {
    static final int WHOLE = 0;
    static final int DIFFERS = 1;
    static final int CANNOT_CHECK = 2;

    /** Above the program's own defaults, below what the environment says. */
    private static final int ORDINAL_OF_FILE = 260;

    private VerifyLog() {}

    /** Checks and says what came of it; gives the exit code: 0 whole, 1 something differs, 2 it could not be checked. */
    public static int run(PrintStream out, PrintStream errors) {
        try {
            return report(check(config()), out);
        } catch (IllegalStateException | UncheckedIOException e) {
            errors.println(e.getMessage());
            return CANNOT_CHECK;
        }
    }

    static int report(LogCheck.Result result, PrintStream out) {
        for (LogCheck.WholePlant plant : result.whole()) {
            out.println("Plant " + plant.plant() + " is whole: " + plant.leaves() + " leaves, " + plant.waiting()
                    + " waiting, in agreement with " + plant.outside() + " heads outside the database."
                    + (plant.outside() == 0 ? " Without such a head an older database passes for today's." : ""));
        }
        if (result.first().isEmpty()) {
            return WHOLE;
        }
        LogCheck.Difference first = result.first().get();
        out.println("The first difference: table " + first.table() + ", row " + first.key() + ". " + first.what());
        return DIFFERS;
    }

    private static SmallRyeConfig config() {
        SmallRyeConfigBuilder builder = new SmallRyeConfigBuilder().addDefaultSources();
        Path file = Path.of("config", "application.properties");
        if (Files.exists(file)) {
            Properties settings = new Properties();
            try (Reader reader = Files.newBufferedReader(file)) {
                settings.load(reader);
            } catch (IOException e) {
                throw new UncheckedIOException(file + " could not be read: " + e.getMessage(), e);
            }
            builder.withSources(new PropertiesConfigSource(settings, file.toString(), ORDINAL_OF_FILE));
        }
        return builder.build();
    }

    private static LogCheck.Result check(SmallRyeConfig config) {
        Path data = Path.of(text(config, "reelproof.data").orElse(".data"));
        SealFiles files = SealFiles.of(
                data,
                text(config, "reelproof.seal.key").map(Path::of),
                text(config, "reelproof.seal.heads").map(Path::of));
        PublicSealKey key = SealKeyFile.readPublic(files.key());
        HeadsFile heads = new HeadsFile(files.heads());
        Optional<String> url = text(config, "quarkus.datasource.jdbc.url");
        return url.isPresent()
                ? CheckedDatabase.ofServer(
                        url.get(),
                        text(config, "quarkus.datasource.username").orElse(null),
                        text(config, "quarkus.datasource.password").orElse(null),
                        key,
                        heads)
                : CheckedDatabase.embedded(data, key, heads);
    }

    private static Optional<String> text(SmallRyeConfig config, String name) {
        return config.getOptionalValue(name, String.class);
    }
}
