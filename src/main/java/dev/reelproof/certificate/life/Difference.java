package dev.reelproof.certificate.life;

import dev.reelproof.wording.CertificateWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;

/** In what a file is not the certificate that was issued. */
public sealed interface Difference {

    /** What it is. */
    String sentence(CertificateWords words);

    /** The file begins as issued, and more was appended, as programs do that change a PDF. */
    record Appended(int bytes) implements Difference {
        @Override
        public String sentence(CertificateWords words) {
            return words.appended(bytes);
        }
    }

    /** Pages are missing or were added. */
    record PageCount(int found, int issued) implements Difference {
        @Override
        public String sentence(CertificateWords words) {
            return words.pageCount(found, issued);
        }
    }

    /** Something else is drawn on a page; pages count from 1. */
    record Page(int page) implements Difference {
        @Override
        public String sentence(CertificateWords words) {
            return words.pageDiffers(page);
        }
    }

    /** An attached file is another, is missing or was added. */
    record Attachment(String name, Change change) implements Difference {
        /** What became of it. */
        public enum Change {
            EXCHANGED,
            MISSING,
            ADDED
        }

        @Override
        public String sentence(CertificateWords words) {
            return switch (change) {
                case EXCHANGED -> words.attachmentExchanged(name);
                case MISSING -> words.attachmentMissing(name);
                case ADDED -> words.attachmentAdded(name);
            };
        }
    }

    /** Pages and attachments are as issued, the bytes are not. */
    record OtherBytes() implements Difference {
        @Override
        public String sentence(CertificateWords words) {
            return words.otherBytes();
        }
    }

    /** The file could not be looked into. */
    record Unreadable() implements Difference {
        @Override
        public String sentence(CertificateWords words) {
            return words.unreadable();
        }
    }

    /**
     * In what a file differs that is not, byte for byte, the one that was issued; at least one difference.
     *
     * @param found what it is made of; empty when it could not be looked into
     * @param appended how many bytes follow the issued ones; zero when it does not begin as issued
     */
    static List<Difference> between(FileParts issued, Optional<FileParts> found, int appended) {
        List<Difference> differences = new ArrayList<>();
        if (appended > 0) {
            differences.add(new Appended(appended));
        }
        if (found.isEmpty()) {
            differences.add(new Unreadable());
            return differences;
        }
        List<String> pages = found.get().pages();
        if (pages.size() != issued.pages().size()) {
            differences.add(new PageCount(pages.size(), issued.pages().size()));
        } else {
            for (int i = 0; i < pages.size(); i++) {
                if (!pages.get(i).equals(issued.pages().get(i))) {
                    differences.add(new Page(i + 1));
                }
            }
        }
        TreeSet<String> names = new TreeSet<>(issued.attachments().keySet());
        names.addAll(found.get().attachments().keySet());
        for (String name : names) {
            String before = issued.attachments().get(name);
            String now = found.get().attachments().get(name);
            if (before == null) {
                differences.add(new Attachment(name, Attachment.Change.ADDED));
            } else if (now == null) {
                differences.add(new Attachment(name, Attachment.Change.MISSING));
            } else if (!Objects.equals(before, now)) {
                differences.add(new Attachment(name, Attachment.Change.EXCHANGED));
            }
        }
        if (differences.isEmpty()) {
            differences.add(new OtherBytes());
        }
        return differences;
    }
}
