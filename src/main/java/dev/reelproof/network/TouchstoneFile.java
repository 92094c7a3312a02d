package dev.reelproof.network;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Reads one Touchstone file: follows its sections and hands each line to what reads it. */
final class TouchstoneFile {
    private static final char KEYWORD_SIGN = '[';
    private static final char OPTION_SIGN = '#';
    private static final int NOISE_COLUMNS = 5;

    /** What may follow data; every other keyword says how they are read and comes before. */
    private static final Set<String> AFTER_DATA =
            Set.of("number of noise frequencies", "begin information", "noise data", "end");

    /** The part of the file that a line stands in. */
    private enum Section {
        HEADER,
        NETWORK_DATA,
        NOISE_DATA,
        ENDED
    }

    private final TouchstoneLines lines;
    private final TouchstoneHeader header;
    private final NumberBudget budget;
    private final List<String> warnings = new ArrayList<>();
    private Section section = Section.HEADER;
    /** An information block may stand in any section, and says nothing that is read. */
    private boolean inInformation;
    /** Absent until data begin: they are read as the header says by then. */
    private @Nullable MatrixReader matrices;

    TouchstoneFile(TouchstoneLines lines, int portsExpected, NumberBudget budget) {
        this.lines = lines;
        this.header = new TouchstoneHeader(lines, portsExpected);
        this.budget = budget;
    }

    NetworkData read() throws IOException {
        for (String text = lines.next(); text != null; text = lines.next()) {
            take(text);
        }
        MatrixReader complete = complete();
        return new NetworkData(
                lines.file(),
                header.words(),
                header.ports(),
                complete.megahertz(),
                complete.startLines(),
                complete.matrices(),
                header.referenceOhm(),
                header.order(),
                warnings);
    }

    private void take(String text) {
        if (text.charAt(0) == KEYWORD_SIGN) {
            keyword(Keyword.read(text, lines));
        } else if (inInformation) {
            return;
        } else if (section == Section.ENDED) {
            throw afterEnd();
        } else if (text.charAt(0) == OPTION_SIGN) {
            header.option(text.substring(1));
        } else if (header.lacksReferences()) {
            header.references(text);
        } else {
            data(text);
        }
    }

    private NetworkException afterEnd() {
        return lines.fault("something follows [End]; a file ends there");
    }

    private void keyword(Keyword keyword) {
        if (inInformation) {
            inInformation = !keyword.name().equals("end information");
            return;
        }
        if (keyword.name().equals("version")) {
            header.version(keyword.value());
            return;
        }
        header.requireVersionTwo(keyword);
        if (section == Section.ENDED) {
            throw afterEnd();
        }
        header.requireWholeReferences();
        header.requireFirst(keyword);
        if (section != Section.HEADER && !AFTER_DATA.contains(keyword.name())) {
            throw lines.fault(keyword.quoted() + " stands after data; what says how they are read comes before them");
        }
        switch (keyword.name()) {
            case "begin information" -> inInformation = true;
            case "network data" -> {
                header.requireReadyForNetworkData();
                section = Section.NETWORK_DATA;
            }
            case "noise data" -> {
                requireClosedMatrix();
                beginNoise();
            }
            case "end" -> {
                requireClosedMatrix();
                section = Section.ENDED;
            }
            default -> header.take(keyword);
        }
    }

    private void data(String text) {
        header.requireOptions();
        if (section == Section.NOISE_DATA) {
            return;
        }
        if (header.isVersionTwo() && section != Section.NETWORK_DATA) {
            throw lines.fault("data stand before [Network Data], or after a keyword that is not known to have them");
        }
        String[] words = TouchstoneLines.words(text);
        if (isNoiseOfVersionOne(words)) {
            beginNoise();
            return;
        }
        if (matrices == null) {
            matrices = new MatrixReader(lines, header.options(), header.layout(), budget);
        }
        matrices.take(words);
    }

    /** Noise data follow those of two ports when the frequency falls back: five columns, of which none is wanted here. */
    private boolean isNoiseOfVersionOne(String[] words) {
        return !header.isVersionTwo()
                && header.ports() == 2
                && matrices != null
                && !matrices.isOpen()
                && words.length == NOISE_COLUMNS
                && matrices.fallsBack(words);
    }

    private void beginNoise() {
        section = Section.NOISE_DATA;
        warnings.add("The noise data of " + lines.file() + " from line " + lines.number() + " were passed over.");
    }

    private void requireClosedMatrix() {
        if (matrices != null) {
            matrices.requireClosed();
        }
    }

    /** The matrices of a file that has all it should. */
    private MatrixReader complete() {
        requireClosedMatrix();
        header.requireOptionsAtEnd();
        header.requireWholeReferences();
        if (header.isVersionTwo() && section != Section.ENDED) {
            throw lines.fault("the file ends without [End]; was it cut short?");
        }
        if (matrices == null || matrices.size() == 0) {
            throw lines.fault("the file holds no network data");
        }
        header.requireFrequencies(matrices.size());
        return matrices;
    }
}
