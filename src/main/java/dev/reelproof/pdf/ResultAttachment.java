package dev.reelproof.pdf;

import dev.reelproof.digest.Sha256;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.OffsetDateTime;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.jspecify.annotations.Nullable;

/**
 * The result as data, in the PDF itself beside the JSON Schema that describes it: associated files in the sense of PDF/A-3 (ISO
 * 19005-3:2012, from memory), the result as {@code Data}, the schema and the proof of the plant's log as {@code Supplement}.
 */
public final class ResultAttachment {
    /** The name under which the PDF has the result. */
    public static final String NAME = "result.json";

    /** The name under which the PDF has the proof that the result is in the plant's log. */
    public static final String PROOF_NAME = "log-proof.json";

    /** The name under which the PDF has the schema. */
    public static final String SCHEMA_NAME = "certified-result.schema.json";

    private final byte[] json;
    private final OffsetDateTime made;
    private final byte @Nullable [] proof;

    /**
     * An attachment.
     *
     * @param json the result, as {@code certified-result.schema.json} describes it
     * @param made when the result was made; the time of the file inside the PDF
     */
    public ResultAttachment(byte[] json, OffsetDateTime made) {
        this(json, made, null);
    }

    private ResultAttachment(byte[] json, OffsetDateTime made, byte @Nullable [] proof) {
        this.json = json.clone();
        this.made = made;
        this.proof = proof == null ? null : proof.clone();
    }

    /**
     * The same result with the proof that it is in the plant's log.
     *
     * @param logProof as {@link InclusionProofJson} writes it, in UTF-8
     */
    public ResultAttachment provenBy(byte[] logProof) {
        return new ResultAttachment(json, made, logProof);
    }

    /** The digest that the page prints, hexadecimal. */
    public String sha256() {
        return Sha256.hex(json);
    }

    /** Puts result and schema into a document that has no other files. */
    void attachTo(PDDocument document) throws IOException {
        Calendar time = GregorianCalendar.from(made.withNano(0).toZonedDateTime());
        // By name, as the tree of names demands.
        Map<String, PDComplexFileSpecification> files = new TreeMap<>();
        files.put(NAME, file(document, NAME, json, "application/json", "Data", "What was measured and found", time));
        if (proof != null) {
            files.put(
                    PROOF_NAME,
                    file(
                            document,
                            PROOF_NAME,
                            proof,
                            "application/json",
                            "Supplement",
                            "Proof that " + NAME + " is in the plant's log (RFC 9162)",
                            time));
        }
        files.put(
                SCHEMA_NAME,
                file(
                        document,
                        SCHEMA_NAME,
                        schema(),
                        "application/schema+json",
                        "Supplement",
                        "JSON Schema of " + NAME,
                        time));
        PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
        tree.setNames(files);
        PDDocumentNameDictionary names = new PDDocumentNameDictionary(document.getDocumentCatalog());
        names.setEmbeddedFiles(tree);
        document.getDocumentCatalog().setNames(names);
        COSArray associated = new COSArray();
        files.values().forEach(file -> associated.add(file.getCOSObject()));
        document.getDocumentCatalog().getCOSObject().setItem(COSName.AF, associated);
    }

    private static PDComplexFileSpecification file(
            PDDocument document,
            String name,
            byte[] bytes,
            String mediaType,
            String relationship,
            String description,
            Calendar time)
            throws IOException {
        PDEmbeddedFile embedded = new PDEmbeddedFile(document, new ByteArrayInputStream(bytes), COSName.FLATE_DECODE);
        embedded.setSubtype(mediaType);
        embedded.setSize(bytes.length);
        embedded.setCreationDate(time);
        embedded.setModDate(time);
        PDComplexFileSpecification file = new PDComplexFileSpecification();
        file.setFile(name);
        file.setFileUnicode(name);
        file.setFileDescription(description);
        file.setEmbeddedFile(embedded);
        file.setEmbeddedFileUnicode(embedded);
        file.getCOSObject().setName(COSName.AF_RELATIONSHIP, relationship);
        return file;
    }

    private static byte[] schema() throws IOException {
        try (InputStream in = ResultAttachment.class.getResourceAsStream("/schemas/" + SCHEMA_NAME)) {
            if (in == null) {
                throw new IOException("the schema " + SCHEMA_NAME + " is not there");
            }
            return in.readAllBytes();
        }
    }
}
