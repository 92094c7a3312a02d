package dev.reelproof.intake;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import org.jspecify.annotations.Nullable;

/** Kinds of file that people send by mistake, known by their first bytes. */
enum KnownFile {
    PNG("a PNG picture", "89504e47"),
    JPEG("a JPEG picture", "ffd8ff"),
    GIF("a GIF picture", "47494638"),
    PDF("a PDF document", "25504446"),
    ZIP("a ZIP file or an office document", "504b0304"),
    GZIP("a file compressed with gzip", "1f8b");

    private static final int BEGINNING = 4096;

    private final String words;
    private final byte[] beginsWith;

    KnownFile(String words, String beginsWith) {
        this.words = words;
        this.beginsWith = HexFormat.of().parseHex(beginsWith);
    }

    /** What a file is, in words; none when it may be text. A byte 0 near its beginning tells any other binary file. */
    static @Nullable String nameOf(byte[] file) {
        for (KnownFile kind : values()) {
            byte[] beginning = kind.beginsWith;
            if (file.length >= beginning.length && Arrays.equals(beginning, Arrays.copyOf(file, beginning.length))) {
                return kind.words;
            }
        }
        String beginning = new String(file, 0, Math.min(file.length, BEGINNING), StandardCharsets.ISO_8859_1);
        return beginning.indexOf('\0') >= 0 ? "a binary file" : null;
    }
}
