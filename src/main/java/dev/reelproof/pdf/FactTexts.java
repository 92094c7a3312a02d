package dev.reelproof.pdf;

import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CertificateContent.Instrument;
import dev.reelproof.certificate.CertificateContent.Quantity;
import dev.reelproof.certificate.Declaration.UnitSystem;
import dev.reelproof.pdf.page.PlainNumber;
import dev.reelproof.wording.Figures;
import dev.reelproof.wording.PaperWord;
import dev.reelproof.wording.Wording;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The facts of a certificate as they are printed: quantities in the unit as sent and in the canonical one, times to the minute. */
final class FactTexts {
    private static final DateTimeFormatter DATE_AND_MINUTE =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final int DATE_LENGTH = "yyyy-MM-dd".length();
    private static final int DATE_AND_MINUTE_LENGTH = "yyyy-MM-dd HH:mm".length();

    private static final double METRES_PER_FOOT = 0.3048;
    private static final double FAHRENHEIT_PER_KELVIN = 1.8;
    private static final double FAHRENHEIT_AT_ZERO = 32;

    private final CertificateContent content;
    private final Wording words;
    private final UnitSystem units;

    FactTexts(CertificateContent content, Wording words) {
        this.content = content;
        this.words = words;
        this.units = content.paper().units();
    }

    @Nullable
    String customer() {
        return content.customer();
    }

    @Nullable
    String order() {
        return content.order();
    }

    @Nullable
    String consignee() {
        return content.consignee();
    }

    String reel() {
        return content.reel();
    }

    String product() {
        return content.product().code();
    }

    String description() {
        return content.product().description();
    }

    String conductors() {
        int count = content.product().pairs();
        return words.paper(
                count == 1 ? PaperWord.ONE_PAIR : PaperWord.PAIRS,
                "count",
                String.valueOf(count),
                "gauge",
                content.product().gauge());
    }

    String length() {
        return length(content.length(), content.lengthMetres(), units);
    }

    /** A length as sent and in m, as the plant prints its lengths. */
    static String length(Quantity sent, double metres, UnitSystem units) {
        return switch (units) {
            case METRIC -> metres(metres);
            case US_CUSTOMARY -> feet(metres);
            case BOTH -> {
                String asSent = Figures.length(sent.value(), sent.unit());
                yield "m".equals(sent.unit()) ? asSent : asSent + " (" + metres(metres) + ")";
            }
        };
    }

    /** As the jacket has them, since they tell which reel it is; where lengths are printed in another unit, in that one too. */
    @Nullable
    String lengthMarks() {
        CertificateContent.Marks marks = content.lengthMarks();
        if (marks == null) {
            return null;
        }
        String onJacket = words.lengthMarks(marks.first(), marks.last(), marks.unit());
        boolean inFeet = units == UnitSystem.US_CUSTOMARY;
        double perMetre = inFeet ? 1 / METRES_PER_FOOT : 1;
        String unit = inFeet ? "ft" : "m";
        return marks.unit().equals(unit)
                ? onJacket
                : onJacket + " ("
                        + words.convertedMarks(marks.firstMetres() * perMetre, marks.lastMetres() * perMetre, unit)
                        + ")";
    }

    String limitSet() {
        CertificateContent.Limits limits = content.limits();
        return limits.title() + ", "
                + words.paper(
                        PaperWord.REVISION,
                        "revision",
                        String.valueOf(limits.revision()),
                        "date",
                        limits.effective(),
                        "id",
                        limits.id());
    }

    String reference() {
        return words.paper(PaperWord.REFERENCE, "temperature", referenceTemperature(), "length", referenceLength());
    }

    String referenceTemperature() {
        return temperature(content.limits().referenceCelsius());
    }

    String referenceLength() {
        double metres = content.limits().referenceMetres();
        return units == UnitSystem.US_CUSTOMARY ? feet(metres) : metres(metres);
    }

    String temperature() {
        Quantity sent = content.conditions().temperature();
        double celsius = content.conditions().celsius();
        return units != UnitSystem.BOTH || "°C".equals(sent.unit())
                ? temperature(celsius)
                : Figures.temperature(sent.value(), sent.unit()) + " (" + temperature(celsius) + ")";
    }

    String tested() {
        String finished = time(content.conditions().finished());
        if (content.conditions().started() == null) {
            return finished;
        }
        String started = time(content.conditions().started());
        boolean sameDay = started.regionMatches(0, finished, 0, DATE_LENGTH);
        return words.paper(
                PaperWord.PERIOD,
                "from",
                sameDay ? started.substring(0, DATE_AND_MINUTE_LENGTH) : started,
                "to",
                sameDay ? finished.substring(DATE_LENGTH + 1) : finished);
    }

    @Nullable
    String station() {
        return content.conditions().station();
    }

    @Nullable
    String technician() {
        return content.conditions().technician();
    }

    String equipment() {
        return content.conditions().equipment().stream().map(this::instrument).collect(Collectors.joining("; "));
    }

    private String instrument(Instrument instrument) {
        return words.paper(
                instrument.calibrationDue() == null ? PaperWord.CALIBRATION_NOT_NEEDED : PaperWord.CALIBRATED,
                "instrument",
                instrument.id(),
                "due",
                instrument.calibrationDue());
    }

    private String temperature(double celsius) {
        return units == UnitSystem.US_CUSTOMARY
                ? Figures.temperature(FAHRENHEIT_AT_ZERO + FAHRENHEIT_PER_KELVIN * celsius, "°F")
                : Figures.temperature(celsius, "°C");
    }

    private static String metres(double value) {
        return Figures.length(value, "m");
    }

    private static String feet(double metres) {
        return Figures.length(metres / METRES_PER_FOOT, "ft");
    }

    /** A time to the minute with its offset from UTC. */
    static String time(String iso) {
        OffsetDateTime time = OffsetDateTime.parse(iso);
        String offset = time.getOffset().equals(ZoneOffset.UTC)
                ? "UTC"
                : "UTC" + PlainNumber.withMinusSign(time.getOffset().getId());
        return time.format(DATE_AND_MINUTE) + " " + offset;
    }
}
