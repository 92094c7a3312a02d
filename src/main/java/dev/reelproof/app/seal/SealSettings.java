package dev.reelproof.app.seal;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** The settings of the log that makes an edit show. */
@ConfigMapping(prefix = "reelproof.seal")
public interface SealSettings {

    /** The file of the key that signs heads; {@code seal-key.pem} in the data folder when not stated. Made when it is not there. */
    Optional<Path> key();

    /** The file of the heads outside the database; {@code seal-heads.jsonl} in the data folder when not stated. */
    Optional<Path> heads();

    /** How often what was written gets its place in the log; zero for on demand alone. */
    @WithDefault("1S")
    Duration sequenceEvery();

    /** How often a head is signed and written outside, when something came. */
    @WithDefault("10M")
    Duration headEvery();
}
