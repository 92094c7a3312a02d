package dev.reelproof.intake.result;

import dev.reelproof.digest.Sha256;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.IntakeException.Kind;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.Words;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A result as received: the JSON document under the name {@code result}, and any number of CSV, Touchstone and ZIP files beside
 * it; or a ZIP file that holds the document as {@code result.json}.
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
        if (!names.contains(Part.RESULT) && parts.stream().noneMatch(ZipPart::isZip)) {
            throw IntakeException.of(
                    Kind.MALFORMED, "upload", "the part 'result' is missing; it must hold the JSON document");
        }
    }

    /** An upload of the JSON document alone. */
    public static Upload ofDocument(byte[] json) {
        return new Upload(List.of(new Part(Part.RESULT, "application/json", json)));
    }

    /**
     * The JSON document.
     *
     * @throws IntakeException MALFORMED when it is in a ZIP file and cannot be had from there
     */
    public Part document() {
        return parts.stream()
                .filter(part -> part.name().equals(Part.RESULT))
                .findFirst()
                .orElseGet(this::zippedDocument);
    }

    private Part zippedDocument() {
        List<Part> documents = parts.stream()
                .filter(ZipPart::isZip)
                .flatMap(part -> ZipPart.document(part).stream())
                .toList();
        if (documents.size() != 1) {
            throw IntakeException.of(
                    Kind.MALFORMED,
                    "upload",
                    "the part 'result' is missing, and "
                            + (documents.isEmpty() ? "no ZIP file holds" : "several ZIP files hold") + " a '"
                            + ZipPart.DOCUMENT + "'; one of them must be the JSON document");
        }
        return documents.get(0);
    }

    /** The other files, in the order received. */
    public List<Part> files() {
        return parts.stream().filter(part -> !part.name().equals(Part.RESULT)).toList();
    }

    /**
     * The digest that tells one content from another, in lower-case hexadecimal.
     *
     * <p>Of one part alone: SHA-256 of its bytes. With other files: SHA-256 over one line a part, {@code "<sha256 of its bytes,
     * hexadecimal>  <name>\n"} in UTF-8, the lines sorted; a Touchstone file that came in a field of another name has that
     * after its own and two blanks, since {@code networks} may mean it by either. Neither the order of the parts nor their
     * media types nor the boundaries of the multipart body count.
     */
    public String sha256() {
        if (parts.size() == 1) {
            return parts.get(0).sha256();
        }
        return Sha256.hex(parts.stream()
                .map(part -> part.sha256() + "  " + part.name() + alias(part) + "\n")
                .sorted()
                .collect(Collectors.joining()));
    }

    private static String alias(Part part) {
        boolean network = NetworkFiles.isTouchstoneName(part.name()) || NetworkFiles.isTouchstoneName(part.field());
        return network && !part.field().equals(part.name()) ? "  " + part.field() : "";
    }
}
