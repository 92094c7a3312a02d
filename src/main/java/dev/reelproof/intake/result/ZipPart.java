package dev.reelproof.intake.result;

import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.IntakeException.Kind;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.Words;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * Reads the members of a ZIP file in one pass, as a stream: nothing is unpacked to disk, and what all members hold together is
 * bounded, whatever they claim.
 */
public final class ZipPart {
    /** The member that may hold the JSON document. */
    public static final String DOCUMENT = "result.json";

    /** What the members of one ZIP file may hold together: four times what an upload may. */
    public static final long MOST_EXPANDED_BYTES = 200_000_000;

    private static final int MOST_MEMBERS = 1000;
    private static final int READ_AT_ONCE = 8192;
    private static final byte[] BEGINS_WITH = {'P', 'K', 3, 4};

    /** Takes a member in: its name and its bytes. */
    @FunctionalInterface
    public interface MemberReader {
        void read(String name, InputStream in) throws IOException;
    }

    private ZipPart() {}

    /** Whether a part is a ZIP file, by its first bytes. */
    public static boolean isZip(Part part) {
        try (InputStream in = part.open()) {
            byte[] first = in.readNBytes(BEGINS_WITH.length);
            return Arrays.equals(first, BEGINS_WITH);
        } catch (IOException e) {
            throw new IllegalStateException("bytes in memory cannot fail to be read", e);
        }
    }

    /** The JSON document that a ZIP file holds; empty when it holds none. */
    static Optional<Part> document(Part zip) {
        List<Part> found = new ArrayList<>();
        each(zip, (name, in) -> {
            if (name.equals(DOCUMENT)) {
                found.add(new Part(Part.RESULT, "application/json", in.readAllBytes()));
            }
        });
        return found.stream().findFirst();
    }

    /**
     * Gives each file in a ZIP file to a reader, in the order of the ZIP file.
     *
     * @throws IntakeException MALFORMED when it cannot be read, CONTENT when a name leads out of it or stands twice, or it
     *     holds too much
     */
    public static void each(Part zip, MemberReader reader) {
        Set<String> names = new HashSet<>();
        try (ZipInputStream members = new ZipInputStream(zip.open())) {
            Bounded bounded = new Bounded(members, zip.name());
            for (ZipEntry entry = members.getNextEntry(); entry != null; entry = members.getNextEntry()) {
                String name = entry.getName();
                requireSafe(zip, name);
                if (!names.add(name)) {
                    throw refused(
                            zip, "two members are named " + Words.quoted(name) + "; each needs a name of its own");
                }
                if (names.size() > MOST_MEMBERS) {
                    throw refused(zip, "has more than " + MOST_MEMBERS + " members; send fewer");
                }
                if (!entry.isDirectory() && !isOfTheDesktop(name)) {
                    reader.read(name, bounded);
                }
                bounded.skipRest();
            }
        } catch (IOException | IllegalArgumentException e) {
            throw IntakeException.of(
                    Kind.MALFORMED, zip.name(), "is not a whole ZIP file, or is encrypted (" + e.getMessage() + ")");
        }
        if (names.isEmpty()) {
            throw IntakeException.of(Kind.MALFORMED, zip.name(), "is a ZIP file without members");
        }
    }

    /** Files that desktops add to folders, such as icons; nobody meant to send them. */
    private static boolean isOfTheDesktop(String name) {
        return name.startsWith("__MACOSX/") || name.endsWith(".DS_Store");
    }

    private static void requireSafe(Part zip, String name) {
        boolean leadsOut = name.startsWith("/")
                || name.contains("\\")
                || name.contains(":")
                || Arrays.asList(name.split("/")).contains("..")
                || name.codePoints().anyMatch(Character::isISOControl);
        if (leadsOut || name.isBlank()) {
            throw refused(
                    zip,
                    "the member " + Words.quoted(name.replaceAll("\\p{Cntrl}", "?"))
                            + " has a name that leads out of the ZIP file; use plain names");
        }
    }

    private static IntakeException refused(Part zip, String message) {
        return IntakeException.of(Kind.CONTENT, zip.name(), message);
    }

    /** The open member; ends the reading when all together are too much. Closing it closes nothing. */
    private static final class Bounded extends FilterInputStream {
        private final String zipName;
        private long left = MOST_EXPANDED_BYTES;

        Bounded(InputStream in, String zipName) {
            super(in);
            this.zipName = zipName;
        }

        private int counted(int read) {
            left -= Math.max(0, read);
            if (left < 0) {
                throw IntakeException.of(
                        Kind.CONTENT,
                        zipName,
                        "its members hold more than " + MOST_EXPANDED_BYTES
                                + " bytes together; send fewer or smaller files");
            }
            return read;
        }

        @Override
        public int read() throws IOException {
            int c = super.read();
            counted(c < 0 ? 0 : 1);
            return c;
        }

        @Override
        public int read(byte[] bytes, int offset, int length) throws IOException {
            return counted(super.read(bytes, offset, length));
        }

        @Override
        public void close() {
            // the ZIP file is closed by whom opened it
        }

        void skipRest() throws IOException {
            byte[] rest = new byte[READ_AT_ONCE];
            int read = read(rest, 0, rest.length);
            while (read >= 0) {
                read = read(rest, 0, rest.length);
            }
        }
    }
}
