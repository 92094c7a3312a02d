package dev.reelproof.intake;

import dev.reelproof.digest.Sha256;
import dev.reelproof.intake.IntakeException.Kind;
import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.util.Arrays;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** One file of an upload, as received. Equal by content; never changed. */
public final class Part {
    /** The name of the part that is the JSON document. */
    public static final String RESULT = "result";

    private static final int LONGEST_NAME = 200;

    private final String name;
    private final String field;
    private final String mediaType;
    private final byte[] bytes;

    /** Computed when it is first asked for, since a part may be large; computed twice it would be the same. */
    private volatile @Nullable String sha256;

    /**
     * A part.
     *
     * @param name its name, unique in the upload: {@code result} for the JSON document, the file's name for another file
     * @param field the name of the form field that it came in; absent where there is no other than the name
     * @param mediaType its media type as sent, if any; kept, not relied on
     * @param bytes its bytes as received
     * @throws IntakeException MALFORMED when the name is empty, too long or holds control characters
     */
    public Part(String name, @Nullable String field, @Nullable String mediaType, byte[] bytes) {
        if (name.isBlank()
                || name.length() > LONGEST_NAME
                || name.codePoints()
                        .anyMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE)) {
            throw IntakeException.of(
                    Kind.MALFORMED,
                    "upload",
                    "a part needs a name of 1 to " + LONGEST_NAME + " characters on one line, not "
                            + Words.quoted(name.replaceAll("\\p{Cntrl}", "?")));
        }
        this.name = name;
        this.field = field == null ? name : field;
        this.mediaType = mediaType == null ? "" : mediaType;
        this.bytes = bytes.clone();
    }

    /** A part whose field has no name of its own. */
    public Part(String name, @Nullable String mediaType, byte[] bytes) {
        this(name, name, mediaType, bytes);
    }

    /** Its name, unique in the upload. */
    public String name() {
        return name;
    }

    /** The name of the form field that it came in; the same as the name where there is no other. */
    public String field() {
        return field;
    }

    /** Its media type as sent; empty when none was. */
    public String mediaType() {
        return mediaType;
    }

    /** A copy of its bytes. */
    public byte[] bytes() {
        return bytes.clone();
    }

    /** Its bytes as a stream; they are not copied. */
    public InputStream open() {
        return new ByteArrayInputStream(bytes);
    }

    /** How many bytes it has. */
    public int size() {
        return bytes.length;
    }

    /** SHA-256 of its bytes (FIPS 180-4), in lower-case hexadecimal; computed once. */
    public String sha256() {
        String known = sha256;
        if (known == null) {
            known = Sha256.hex(bytes);
            sha256 = known;
        }
        return known;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Part part
                && name.equals(part.name)
                && field.equals(part.field)
                && mediaType.equals(part.mediaType)
                && Arrays.equals(bytes, part.bytes);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, field, mediaType, Arrays.hashCode(bytes));
    }

    @Override
    public String toString() {
        return name + " (" + mediaType + ", " + bytes.length + " bytes)";
    }
}
