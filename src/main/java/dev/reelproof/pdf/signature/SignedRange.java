package dev.reelproof.pdf.signature;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;

/**
 * Which bytes of a file a signature covers: all from the file's begin to the end of a revision, but for the place of the signature
 * itself (ISO 32000-1, 12.8.1, from memory). A signature that covers less covers nothing here.
 *
 * @param signed the bytes covered
 * @param signature the signature's own bytes, with what fills its place
 * @param bytesAfter how many bytes follow
 */
record SignedRange(byte[] signed, byte[] signature, long bytesAfter) {
    private static final int NUMBERS = 4;
    private static final int SECOND = 2;
    private static final int SECOND_LENGTH = 3;
    private static final String END_OF_REVISION = "%%EOF";

    /** Where the bytes end that a signature covers. */
    static long endOf(PDSignature signature) {
        int[] range = signature.getByteRange();
        return range.length == NUMBERS ? (long) range[SECOND] + range[SECOND_LENGTH] : Long.MAX_VALUE;
    }

    static SignedRange of(PDSignature dictionary, byte[] pdf) throws BrokenSignatureException {
        int[] range = dictionary.getByteRange();
        long end = endOf(dictionary);
        if (!(range.length == NUMBERS
                && range[0] == 0
                && range[1] > 0
                && range[SECOND] > range[1] + 1
                && range[SECOND_LENGTH] > 0
                && end <= pdf.length)) {
            throw new BrokenSignatureException("it does not say what it covers, or the file is cut off.");
        }
        byte[] place = Arrays.copyOfRange(pdf, range[1], range[SECOND]);
        byte[] signature = hexadecimal(place);
        if (!Arrays.equals(signature, dictionary.getContents())) {
            throw new BrokenSignatureException("its place in the file holds something else.");
        }
        String last = new String(pdf, range[SECOND], range[SECOND_LENGTH], StandardCharsets.ISO_8859_1);
        if (!last.strip().endsWith(END_OF_REVISION)) {
            throw new BrokenSignatureException("it covers a part of the file only.");
        }
        byte[] signed = new byte[range[1] + range[SECOND_LENGTH]];
        System.arraycopy(pdf, 0, signed, 0, range[1]);
        System.arraycopy(pdf, range[SECOND], signed, range[1], range[SECOND_LENGTH]);
        return new SignedRange(signed, signature, pdf.length - end);
    }

    private static byte[] hexadecimal(byte[] place) throws BrokenSignatureException {
        if (place[0] == '<' && place[place.length - 1] == '>') {
            try {
                return HexFormat.of().parseHex(new String(place, 1, place.length - 2, StandardCharsets.ISO_8859_1));
            } catch (IllegalArgumentException e) {
                // Said below.
            }
        }
        throw new BrokenSignatureException("what it leaves out is more than the signature itself.");
    }
}
