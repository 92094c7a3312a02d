package dev.reelproof.pdf.file;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * Finds out whether a PDF can be opened without unpacking more than there is room for. A few kilobytes can hold gigabytes; the library
 * that reads a PDF has no bound of its own.
 *
 * <p>Each place where a stream may begin is unpacked here first, and thrown away. A file is let through only when every stream is
 * either not packed or packed once by Flate, as certificates are: other packings, names written with escapes (but for the media type of an attached file)
 * and encryption are not.
 */
final class PackedStreams {
    private static final String STREAM = "stream";
    private static final String END = "end";
    private static final String OBJECT = "obj";
    private static final Pattern FILTER =
            Pattern.compile("/Filter\\s*(?:/FlateDecode\\b|\\[\\s*/FlateDecode\\s*]|\\[\\s*])");
    private static final Pattern ANY_FILTER = Pattern.compile("/(?:Filter|FFilter|F)\\b");

    /** The media type of an attached file: the slash in it is always written with an escape, and is no more than part of that name. */
    private static final Pattern MEDIA_TYPE = Pattern.compile("/Subtype\\s*/\\w+#2[Ff][\\w.+-]+");

    private static final int LONGEST_DICTIONARY = 4_000;
    private static final int MOST_STREAMS = 20_000;

    private PackedStreams() {}

    /**
     * Whether all streams of a file together unpack to no more than so many bytes.
     *
     * @param most the most bytes
     */
    static boolean fit(byte[] file, long most) {
        String text = new String(file, StandardCharsets.ISO_8859_1);
        if (text.contains("/Encrypt")) {
            return false;
        }
        long left = most;
        int streams = 0;
        byte[] room = new byte[1 << 16];
        for (int at = text.indexOf(STREAM); at >= 0; at = text.indexOf(STREAM, at + STREAM.length())) {
            if (text.startsWith(END, at - END.length())) {
                continue;
            }
            int begin = text.lastIndexOf(OBJECT, at);
            if (++streams > MOST_STREAMS || begin < 0 || at - begin > LONGEST_DICTIONARY) {
                return false;
            }
            String dictionary = MEDIA_TYPE.matcher(text.substring(begin, at)).replaceAll("");
            Matcher filter = FILTER.matcher(dictionary);
            boolean isPacked = filter.find();
            String rest = isPacked
                    ? dictionary.substring(0, filter.start()) + dictionary.substring(filter.end())
                    : dictionary;
            if (dictionary.indexOf('#') >= 0 || ANY_FILTER.matcher(rest).find()) {
                return false;
            }
            left -= unpacked(file, at + STREAM.length(), left, room);
            if (!(left >= 0)) {
                return false;
            }
        }
        return true;
    }

    /** How many bytes are packed at a place, whether the dictionary says so or not; what is not packed counts nothing. */
    private static long unpacked(byte[] file, int from, long most, byte[] room) {
        int start = from;
        while (start < file.length && (file[start] == '\r' || file[start] == '\n' || file[start] == ' ')) {
            start++;
        }
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(file, start, file.length - start);
            long total = 0;
            while (!inflater.finished() && total <= most) {
                int count = inflater.inflate(room);
                if (count == 0 && (inflater.needsInput() || inflater.needsDictionary())) {
                    break;
                }
                total += count;
            }
            return total;
        } catch (DataFormatException e) {
            return inflater.getBytesWritten();
        } finally {
            inflater.end();
        }
    }
}
