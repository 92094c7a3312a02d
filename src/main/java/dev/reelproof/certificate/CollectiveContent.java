package dev.reelproof.certificate;

import dev.reelproof.certificate.CertificateContent.Quantity;
import dev.reelproof.certificate.CertificateContent.Row;
import dev.reelproof.digest.Sha256;
import dev.reelproof.wording.Catalogue;
import dev.reelproof.wording.PaperWord;
import dev.reelproof.wording.Wording;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What a collective certificate says: it stands for several reels of an order, and names for each the certificate that it rests on. It
 * judges nothing itself.
 *
 * @param number its number, of the same series as those of single reels
 * @param issue always 1: another selection or another issue of a certificate makes another collective certificate
 * @param issued when it was issued, ISO 8601
 * @param plant the plant that issues it
 * @param paper what it is declared to be, as the certificates that it names are
 * @param order the customer order
 * @param customer who ordered; null when not known
 * @param lines one a reel, by reel
 */
public record CollectiveContent(
        String number,
        int issue,
        String issued,
        Plant plant,
        CertificateContent.Paper paper,
        String order,
        @Nullable String customer,
        List<Line> lines)
        implements NumberedPaper {
    public static final int FIRST_ISSUE = 1;

    private static final String DECIBEL = "dB";
    private static final char MINUS_SIGN = '\u2212';

    public CollectiveContent {
        lines = List.copyOf(lines);
        if (lines.isEmpty()) {
            throw new IllegalArgumentException("a collective certificate names at least one certificate");
        }
        if (lines.stream().map(Line::reel).distinct().count() != lines.size()) {
            throw new IllegalArgumentException("a collective certificate names each reel once");
        }
    }

    /**
     * A reel and the certificate that stands for it.
     *
     * @param reel the reel's number
     * @param product the product's code
     * @param length its length as sent
     * @param lengthMetres the same in m
     * @param certificate the number of its certificate
     * @param issue which issue of that
     * @param pdfSha256 digest of that certificate's PDF, hexadecimal
     * @param verdict the word of the HTTP contract
     * @param conceded whether the reel is used as it is by a concession
     * @param conditional whether a requirement was passed only conditionally
     * @param least its least margin in dB; null when no requirement has one
     */
    public record Line(
            String reel,
            String product,
            Quantity length,
            double lengthMetres,
            String certificate,
            int issue,
            String pdfSha256,
            String verdict,
            boolean conceded,
            boolean conditional,
            @Nullable Least least) {

        /** The line of a certificate. */
        public static Line of(CertificateContent content, String pdfSha256) {
            return new Line(
                    content.reel(),
                    content.product().code(),
                    content.length(),
                    content.lengthMetres(),
                    content.number(),
                    content.issue(),
                    pdfSha256,
                    content.verdict(),
                    content.restsOnConcession(),
                    !content.conditionalRows().isEmpty(),
                    Least.of(content.rows()).orElse(null));
        }
    }

    /**
     * The least margin of a reel in dB. Margins of other units cannot be compared with it, and are left to the reel's own table.
     *
     * @param title the requirement's name
     * @param margin the margin as printed
     * @param where pair or combination, and frequency
     */
    public record Least(String title, String margin, String where) {

        static Optional<Least> of(List<Row> rows) {
            return rows.stream()
                    .filter(row -> row.unit().equals(DECIBEL) && !row.margin().isBlank())
                    .min(Comparator.comparing(row -> decibels(row.margin())))
                    .map(row -> new Least(row.title(), row.margin(), row.where()));
        }

        /** A figure as certificates print it. */
        private static BigDecimal decibels(String printed) {
            return new BigDecimal(printed.replace(MINUS_SIGN, '-').replace(',', '.'));
        }
    }

    /**
     * Puts together what it says; the kind, language and sheet of the paper are those of the certificates that it names.
     *
     * @param authorised who authorises it; null where that is written by hand
     * @param customer who ordered; null when not known
     * @param named the certificates
     * @param contents what they say
     * @throws IllegalArgumentException when one of them says nothing, or none is named
     */
    public static CollectiveContent of(
            Issuing issuing,
            Declaration.@Nullable Signatory authorised,
            String order,
            @Nullable String customer,
            List<IssuedCertificate> named,
            List<CertificateContent> contents) {
        Map<String, CertificateContent> ofNumber =
                contents.stream().collect(Collectors.toMap(CertificateContent::number, Function.identity()));
        List<Line> lines = named.stream()
                .map(one -> Optional.ofNullable(ofNumber.get(one.number()))
                        .filter(content -> content.issue() == one.issue())
                        .map(content -> Line.of(content, one.pdfSha256()))
                        .orElseThrow(() -> new IllegalArgumentException("what certificate " + one.number() + ", issue "
                                + one.issue() + ", says was not given")))
                .toList();
        CertificateContent.Paper theirs = contents.stream()
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("a collective certificate names certificates"))
                .paper();
        Wording words = Wording.of(Catalogue.of(Locale.forLanguageTag(theirs.language())));
        String kind = theirs.standard() == null ? theirs.title() : theirs.title() + " (" + theirs.standard() + ")";
        return new CollectiveContent(
                issuing.number().toString(),
                issuing.issue(),
                issuing.issued().toString(),
                issuing.plant(),
                new CertificateContent.Paper(
                        words.paper(PaperWord.COLLECTIVE),
                        kind,
                        theirs.language(),
                        theirs.sheet(),
                        theirs.units(),
                        authorised),
                order,
                customer,
                lines);
    }

    /** The same under the number and time of issue that it gets. */
    public CollectiveContent numbered(CertificateNumber newNumber, OffsetDateTime newIssued) {
        return numbered(newNumber.toString(), newIssued.toString());
    }

    /** The same under the number and time of issue of another. */
    public CollectiveContent numberedAs(CollectiveContent other) {
        return numbered(other.number, other.issued);
    }

    private CollectiveContent numbered(String newNumber, String newIssued) {
        return new CollectiveContent(newNumber, issue, newIssued, plant, paper, order, customer, lines);
    }

    /** Digest of the order and of which certificates it names: two that name the same are one. */
    public String namesSha256() {
        return Sha256.hex(lines.stream()
                .map(line -> line.certificate() + "/" + line.issue())
                .sorted()
                .collect(Collectors.joining("\n", order + "\n", "")));
    }

    /** The length of all reels together, m. */
    public double totalMetres() {
        return lines.stream().mapToDouble(Line::lengthMetres).sum();
    }
}
