package dev.reelproof.pdf.page;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/**
 * The structure of a document: headings, paragraphs, tables and figures in reading order, for who hears it or takes it apart (ISO 32000-1,
 * 14.7 and 14.8, from memory). Each page counts its pieces of content from 0; the tree says which part each belongs to.
 */
public final class StructureTree {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final Part whole;
    private final Map<PDPage, List<PDStructureElement>> contents = new HashMap<>();
    private final List<PDPage> pages = new ArrayList<>();

    /** The structure of a document; it is part of it from now on. */
    public StructureTree(PDDocument document) {
        PDStructureElement element = new PDStructureElement("Document", root);
        root.appendKid(element);
        this.whole = new Part(element);
        document.getDocumentCatalog().setStructureTreeRoot(root);
        PDMarkInfo marks = new PDMarkInfo();
        marks.setMarked(true);
        document.getDocumentCatalog().setMarkInfo(marks);
        PDViewerPreferences viewer = new PDViewerPreferences(new COSDictionary());
        viewer.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(viewer);
    }

    /** A part of the structure. */
    public static final class Part {
        private final PDStructureElement element;

        private Part(PDStructureElement element) {
            this.element = element;
        }

        /** A part below this one, after those that it has, of one of PDF's standard types. */
        public Part add(String type) {
            PDStructureElement below = new PDStructureElement(type, element);
            element.appendKid(below);
            return new Part(below);
        }

        /** What a picture shows, in words. */
        public Part describedAs(String words) {
            element.setAlternateDescription(words);
            return this;
        }

        /** Says that a cell heads its column. */
        public Part headingColumn() {
            return scope("Column");
        }

        /** Says that a cell heads its row. */
        public Part headingRow() {
            return scope("Row");
        }

        private Part scope(String scope) {
            COSDictionary attributes = new COSDictionary();
            attributes.setName(COSName.O, "Table");
            attributes.setName(COSName.getPDFName("Scope"), scope);
            element.getCOSObject().setItem(COSName.A, attributes);
            return this;
        }

        COSName type() {
            return COSName.getPDFName(element.getStructureType());
        }
    }

    /** The whole document. */
    public Part whole() {
        return whole;
    }

    void add(PDPage page) {
        page.setStructParents(pages.size());
        page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
        pages.add(page);
        contents.put(page, new ArrayList<>());
    }

    /** A new piece of content of a part on a page. */
    PDPropertyList content(Part part, PDPage page) {
        List<PDStructureElement> onPage = contents.computeIfAbsent(page, one -> new ArrayList<>());
        int id = onPage.size();
        onPage.add(part.element);
        COSDictionary reference = new COSDictionary();
        reference.setName(COSName.TYPE, "MCR");
        reference.setItem(COSName.PG, page);
        reference.setInt(COSName.MCID, id);
        append(part.element, reference);
        COSDictionary properties = new COSDictionary();
        properties.setInt(COSName.MCID, id);
        return PDPropertyList.create(properties);
    }

    private static void append(PDStructureElement element, COSDictionary kid) {
        COSArray kids = element.getCOSObject().getCOSArray(COSName.K);
        if (kids == null) {
            kids = new COSArray();
            if (element.getCOSObject().getDictionaryObject(COSName.K) != null) {
                kids.add(element.getCOSObject().getItem(COSName.K));
            }
            element.getCOSObject().setItem(COSName.K, kids);
        }
        kids.add(kid);
    }

    /** Writes down which part each piece of content belongs to. The tree is complete after it. */
    public void finish() {
        COSArray numbers = new COSArray();
        for (int page = 0; page < pages.size(); page++) {
            COSArray parts = new COSArray();
            contents.getOrDefault(pages.get(page), List.of()).forEach(parts::add);
            numbers.add(COSInteger.get(page));
            numbers.add(parts);
        }
        COSDictionary tree = new COSDictionary();
        tree.setItem(COSName.NUMS, numbers);
        root.getCOSObject().setItem(COSName.PARENT_TREE, tree);
        root.getCOSObject().setInt(COSName.PARENT_TREE_NEXT_KEY, pages.size());
    }
}
