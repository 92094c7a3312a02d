package dev.reelproof.app.seal;

import java.nio.file.Path;
import java.util.Optional;

/** Where the log's files lie. */
record SealFiles(Path key, Path heads) {

    static SealFiles of(Path data, Optional<Path> key, Optional<Path> heads) {
        return new SealFiles(key.orElse(data.resolve("seal-key.pem")), heads.orElse(data.resolve("seal-heads.jsonl")));
    }
}
