package dev.reelproof.intake;

import dev.reelproof.intake.IntakeException.Kind;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A result as received: the JSON document under the name {@code result}, and any number of CSV files beside it.
 *
 * @param parts the files, in the order received
 */
public record Upload(List<Part> parts) {

    /**
     * An upload.
     *
     * @throws IntakeException MALFORMED when the document is missing or two parts have one name
     */
    public Upload {
        parts = List.copyOf(parts);
        Set<String> names = new HashSet<>();
        for (Part part : parts) {
            if (!names.add(part.name())) {
                throw IntakeException.of(
                        Kind.MALFORMED,
                        "upload",
                        "two parts are named " + Words.quoted(part.name()) + "; each part needs a name of its own");
            }
        }
        if (!names.contains(Part.RESULT)) {
            throw IntakeException.of(
                    Kind.MALFORMED, "upload", "the part 'result' is missing; it must hold the JSON document");
        }
    }

    /** An upload of the JSON document alone. */
    public static Upload ofDocument(byte[] json) {
        return new Upload(List.of(new Part(Part.RESULT, "application/json", json)));
    }

    /** The JSON document. */
    public Part document() {
        return parts.stream()
                .filter(part -> part.name().equals(Part.RESULT))
                .findFirst()
                .orElseThrow();
    }

    /** The CSV files, in the order received. */
    public List<Part> files() {
        return parts.stream().filter(part -> !part.name().equals(Part.RESULT)).toList();
    }

    /**
     * The digest that tells one content from another, in lower-case hexadecimal.
     *
     * <p>Of the document alone: SHA-256 of its bytes. With CSV files: SHA-256 over one line a part,
     * {@code "<sha256 of its bytes, hexadecimal>  <name>\n"} in UTF-8, the lines sorted. Neither the order of the parts nor
     * their media types nor the boundaries of the multipart body count.
     */
    public String sha256() {
        if (parts.size() == 1) {
            return parts.get(0).sha256();
        }
        return Part.sha256(parts.stream()
                .map(part -> part.sha256() + "  " + part.name() + "\n")
                .sorted()
                .collect(Collectors.joining()));
    }
}
