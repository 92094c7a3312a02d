package dev.reelproof.pdf.check;

import dev.reelproof.digest.Sha256;
import dev.reelproof.pdf.Imprint;
import dev.reelproof.pdf.ResultAttachment;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.text.PDFTextStripper;

/** Compares what the document says of itself with its pages and its attachment. */
final class ContentStatements {
    private ContentStatements() {}

    static List<Statement> of(PDDocument document, Imprint imprint) throws IOException {
        List<Statement> statements = new ArrayList<>();
        statements.add(pages(document, imprint));
        String text = new PDFTextStripper().getText(document).replaceAll("\\s+", "");
        if (!text.contains(imprint.number())) {
            statements.add(Statement.objects(
                    "Its pages do not print the number " + imprint.number() + " that the document states."));
        }
        Optional<byte[]> result = result(document);
        if (imprint.resultSha256().isEmpty()) {
            if (result.isPresent()) {
                statements.add(Statement.objects("It has a result attached and states no digest of it."));
            }
            return statements;
        }
        String stated = imprint.resultSha256().get();
        if (result.isEmpty()) {
            statements.add(Statement.objects("The attached result is missing."));
        } else if (!Sha256.hex(result.get()).equals(stated)) {
            statements.add(Statement.objects(
                    "The attached result is not the one that the certificate was issued with: its digest differs."));
        } else if (!text.contains(stated)) {
            statements.add(Statement.objects("The attached result is not the one whose digest the page prints."));
        } else {
            statements.add(Statement.fits("The attached result is the one whose digest the page prints."));
        }
        return statements;
    }

    private static Statement pages(PDDocument document, Imprint imprint) {
        int found = document.getNumberOfPages();
        if (found == imprint.pages()) {
            return Statement.fits(found == 1 ? "Its one page is there." : "All its " + found + " pages are there.");
        }
        return Statement.objects("It was issued with " + imprint.pages() + (imprint.pages() == 1 ? " page" : " pages")
                + " and has " + found + ": pages were " + (found < imprint.pages() ? "removed." : "added."));
    }

    private static Optional<byte[]> result(PDDocument document) throws IOException {
        return file(document, ResultAttachment.NAME);
    }

    static Optional<byte[]> file(PDDocument document, String name) throws IOException {
        PDDocumentNameDictionary names = document.getDocumentCatalog().getNames();
        PDEmbeddedFilesNameTreeNode tree = names == null ? null : names.getEmbeddedFiles();
        Map<String, PDComplexFileSpecification> files = tree == null ? null : tree.getNames();
        PDComplexFileSpecification file = files == null ? null : files.get(name);
        PDEmbeddedFile embedded = file == null ? null : file.getEmbeddedFile();
        return embedded == null ? Optional.empty() : Optional.of(embedded.toByteArray());
    }
}
