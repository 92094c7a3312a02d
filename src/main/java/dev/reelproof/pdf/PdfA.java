package dev.reelproof.pdf;

import dev.reelproof.certificate.NumberedPaper;
import dev.reelproof.digest.Sha256;
import dev.reelproof.pdf.page.EmbeddedFont;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Calendar;
import java.util.GregorianCalendar;
import javax.xml.transform.TransformerException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.xmpbox.XMPMetadata;
import org.apache.xmpbox.schema.AdobePDFSchema;
import org.apache.xmpbox.schema.DublinCoreSchema;
import org.apache.xmpbox.schema.PDFAIdentificationSchema;
import org.apache.xmpbox.schema.XMPBasicSchema;
import org.apache.xmpbox.type.BadFieldValueException;
import org.apache.xmpbox.xml.XmpSerializer;

/**
 * Makes a document archivable as PDF/A-3, level A (ISO 19005-3:2012, from memory), and accessible as PDF/UA-1: identification, output
 * intent, and information that agrees with the metadata. The file identifier follows from the content alone.
 */
final class PdfA {
    private static final int PDFA_PART = 3;
    private static final String CONFORMANCE_LEVEL = "A";
    private static final String END_OF_METADATA = "</rdf:RDF>";

    /** That the file is PDF/UA-1 too (ISO 14289-1:2014, 5), and, since PDF/A knows no such schema, what that schema is. */
    private static final String ACCESSIBLE =
            """
            <rdf:Description rdf:about="" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"><pdfuaid:part>1</pdfuaid:part></rdf:Description>
            <rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" \
            xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
            <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
            <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
            <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
            <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
            <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
            <pdfaProperty:name>part</pdfaProperty:name><pdfaProperty:valueType>Integer</pdfaProperty:valueType>
            <pdfaProperty:category>internal</pdfaProperty:category>
            <pdfaProperty:description>part of ISO 14289 that the file follows</pdfaProperty:description>
            </rdf:li></rdf:Seq></pdfaSchema:property>
            </rdf:li></rdf:Bag></pdfaExtension:schemas></rdf:Description>
            """;

    private static final String PRODUCER = "Reelproof";
    private static final String SRGB = "sRGB IEC61966-2.1";
    private static final int FILE_IDENTIFIER_BYTES = 16;

    private PdfA() {}

    /** @param about what the paper is about, in few words */
    static void describe(PDDocument document, NumberedPaper content, String about, EmbeddedFont font)
            throws IOException {
        String title = font.printable(content.paper().title() + " " + content.number() + ", " + about);
        String author = font.printable(content.plant().name());
        Calendar issued = GregorianCalendar.from(
                OffsetDateTime.parse(content.issued()).withNano(0).toZonedDateTime());

        PDDocumentInformation information = document.getDocumentInformation();
        information.setTitle(title);
        information.setAuthor(author);
        information.setCreator(PRODUCER);
        information.setProducer(PRODUCER);
        information.setCreationDate(issued);
        information.setModificationDate(issued);

        document.getDocumentCatalog().setLanguage(content.paper().language());
        document.getDocumentCatalog().setMetadata(metadata(document, title, author, issued));
        document.getDocumentCatalog().addOutputIntent(outputIntent(document));
        setFileIdentifier(document, content);
    }

    private static PDMetadata metadata(PDDocument document, String title, String author, Calendar issued)
            throws IOException {
        XMPMetadata metadata = XMPMetadata.createXMPMetadata();
        try {
            PDFAIdentificationSchema identification = metadata.createAndAddPDFAIdentificationSchema();
            identification.setPart(PDFA_PART);
            identification.setConformance(CONFORMANCE_LEVEL);
            DublinCoreSchema core = metadata.createAndAddDublinCoreSchema();
            core.setTitle(title);
            core.addCreator(author);
            XMPBasicSchema basic = metadata.createAndAddXMPBasicSchema();
            basic.setCreatorTool(PRODUCER);
            basic.setCreateDate(issued);
            basic.setModifyDate(issued);
            AdobePDFSchema pdf = metadata.createAndAddAdobePDFSchema();
            pdf.setProducer(PRODUCER);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            new XmpSerializer().serialize(metadata, bytes, true);
            PDMetadata packet = new PDMetadata(document);
            String serialized = bytes.toString(StandardCharsets.UTF_8);
            packet.importXMPMetadata(serialized
                    .replace(END_OF_METADATA, ACCESSIBLE + END_OF_METADATA)
                    .getBytes(StandardCharsets.UTF_8));
            return packet;
        } catch (BadFieldValueException | TransformerException e) {
            throw new IllegalStateException("the metadata of the certificate cannot be written", e);
        }
    }

    private static PDOutputIntent outputIntent(PDDocument document) throws IOException {
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        PDOutputIntent intent = new PDOutputIntent(document, new ByteArrayInputStream(profile));
        intent.setInfo(SRGB);
        intent.setOutputCondition(SRGB);
        intent.setOutputConditionIdentifier(SRGB);
        intent.setRegistryName("http://www.color.org");
        return intent;
    }

    /** Takes the file identifier from the digest of the content, so that the same content gives the same bytes. */
    private static void setFileIdentifier(PDDocument document, NumberedPaper content) {
        byte[] digest = Sha256.of(content.toString().getBytes(StandardCharsets.UTF_8));
        document.setDocumentId(ByteBuffer.wrap(digest).getLong());
        COSString identifier = new COSString(Arrays.copyOf(digest, FILE_IDENTIFIER_BYTES));
        COSArray pair = new COSArray();
        pair.add(identifier);
        pair.add(identifier);
        document.getDocument().getTrailer().setItem(COSName.ID, pair);
    }
}
