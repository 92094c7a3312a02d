package dev.reelproof.pdf.file;

import dev.reelproof.certificate.life.FileParts;
import dev.reelproof.digest.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;

/** Takes the file of a certificate apart: what is drawn on each page, and what is attached. Nothing is drawn or run for it. */
public final class CertificateParts {
    private static final long MOST_UNPACKED = 64L << 20;
    private static final int MOST_PAGES = 2_000;
    private static final int MOST_ATTACHMENTS = 100;

    private long left = MOST_UNPACKED;

    private CertificateParts() {}

    /** The parts of a file; empty when it is no PDF, or too large or too strange to be looked into. */
    public static Optional<FileParts> of(byte[] file) {
        if (!PackedStreams.fit(file, MOST_UNPACKED)) {
            return Optional.empty();
        }
        try (PDDocument document = Loader.loadPDF(file)) {
            return Optional.of(new CertificateParts().parts(document));
        } catch (IOException | RuntimeException | StackOverflowError e) {
            // A file of a stranger can be broken in any way; then nothing is known of its parts.
            return Optional.empty();
        }
    }

    private FileParts parts(PDDocument document) throws IOException {
        List<String> pages = new ArrayList<>();
        for (PDPage page : document.getPages()) {
            if (pages.size() == MOST_PAGES) {
                throw new IOException("too many pages");
            }
            try (InputStream drawn = page.getContents()) {
                pages.add(digest(drawn));
            }
        }
        Map<String, String> attachments = new TreeMap<>();
        PDEmbeddedFilesNameTreeNode files = document.getDocumentCatalog().getNames() == null
                ? null
                : document.getDocumentCatalog().getNames().getEmbeddedFiles();
        if (files != null) {
            collect(files, attachments, 0);
        }
        return new FileParts(pages, attachments);
    }

    private void collect(PDNameTreeNode<PDComplexFileSpecification> node, Map<String, String> attachments, int depth)
            throws IOException {
        Map<String, PDComplexFileSpecification> names = node.getNames();
        if (names != null) {
            for (Map.Entry<String, PDComplexFileSpecification> entry : names.entrySet()) {
                PDEmbeddedFile file = entry.getValue().getEmbeddedFile();
                if (file != null) {
                    try (InputStream content = file.createInputStream()) {
                        attachments.put(entry.getKey(), digest(content));
                    }
                }
                if (attachments.size() > MOST_ATTACHMENTS) {
                    throw new IOException("too many attachments");
                }
            }
        }
        List<PDNameTreeNode<PDComplexFileSpecification>> kids = node.getKids();
        if (kids != null && depth < MOST_ATTACHMENTS) {
            for (PDNameTreeNode<PDComplexFileSpecification> kid : kids) {
                collect(kid, attachments, depth + 1);
            }
        }
    }

    private String digest(InputStream in) throws IOException {
        byte[] bytes = in.readNBytes((int) Math.min(left + 1, Integer.MAX_VALUE - 8));
        left -= bytes.length;
        if (!(left >= 0)) {
            throw new IOException("the parts together are too large");
        }
        return Sha256.hex(bytes);
    }
}
