package dev.reelproof.api.result;

import dev.reelproof.intake.IntakeException;
import dev.reelproof.intake.Part;
import dev.reelproof.intake.result.SentTest;
import dev.reelproof.intake.result.Upload;
import io.netty.buffer.Unpooled;
import io.netty.handler.codec.http.DefaultFullHttpRequest;
import io.netty.handler.codec.http.HttpHeaderNames;
import io.netty.handler.codec.http.HttpMethod;
import io.netty.handler.codec.http.HttpVersion;
import io.netty.handler.codec.http.LastHttpContent;
import io.netty.handler.codec.http.multipart.DefaultHttpDataFactory;
import io.netty.handler.codec.http.multipart.FileUpload;
import io.netty.handler.codec.http.multipart.HttpData;
import io.netty.handler.codec.http.multipart.HttpPostMultipartRequestDecoder;
import io.netty.handler.codec.http.multipart.HttpPostRequestDecoder.EndOfDataDecoderException;
import io.netty.handler.codec.http.multipart.InterfaceHttpData;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Takes the body of a multipart/form-data upload apart, each file byte for byte as received. */
public final class MultipartUpload {
    private static final int MOST_PARTS = 1000;
    private static final int LONGEST_HEADER_BYTES = 8192;
    private static final String WHERE = "upload";

    private MultipartUpload() {}

    /**
     * The upload in a body, with the reason of a retest where the form has one.
     *
     * @param contentType the header Content-Type with its boundary
     * @throws IntakeException MALFORMED when the body is not such an upload, or ends early
     */
    public static SentTest read(String contentType, byte[] body) {
        DefaultFullHttpRequest request =
                new DefaultFullHttpRequest(HttpVersion.HTTP_1_1, HttpMethod.POST, "/", Unpooled.wrappedBuffer(body));
        request.headers().set(HttpHeaderNames.CONTENT_TYPE, contentType);
        HttpPostMultipartRequestDecoder decoder;
        try {
            decoder = new HttpPostMultipartRequestDecoder(
                    new DefaultHttpDataFactory(false),
                    request,
                    StandardCharsets.UTF_8,
                    MOST_PARTS,
                    LONGEST_HEADER_BYTES);
        } catch (RuntimeException e) {
            throw notMultipart(e);
        }
        try {
            // Tells the decoder that it has all, so that it can tell a whole body from one that ends early.
            decoder.offer(LastHttpContent.EMPTY_LAST_CONTENT);
            return test(parts(decoder));
        } finally {
            decoder.destroy();
        }
    }

    private static SentTest test(List<Part> parts) {
        List<Part> reasons = parts.stream()
                .filter(part -> part.name().equals(SentTest.RETEST_REASON))
                .toList();
        if (reasons.size() > 1) {
            throw IntakeException.of(
                    IntakeException.Kind.MALFORMED,
                    WHERE,
                    "has the field " + SentTest.RETEST_REASON + " more than once");
        }
        List<Part> files =
                parts.stream().filter(part -> !reasons.contains(part)).toList();
        return new SentTest(
                new Upload(files),
                reasons.isEmpty()
                        ? null
                        : SentTest.reason(new String(reasons.get(0).bytes(), StandardCharsets.UTF_8)));
    }

    private static List<Part> parts(HttpPostMultipartRequestDecoder decoder) {
        List<Part> parts = new ArrayList<>();
        try {
            while (decoder.hasNext()) {
                parts.add(part(decoder.next()));
            }
        } catch (EndOfDataDecoderException e) {
            return parts;
        } catch (IntakeException e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            throw notMultipart(e);
        }
        throw IntakeException.of(
                IntakeException.Kind.MALFORMED,
                WHERE,
                "the multipart body ends before its last boundary; was the upload cut short?");
    }

    private static Part part(InterfaceHttpData data) throws IOException {
        if (data instanceof FileUpload file) {
            boolean isDocument = Part.RESULT.equals(file.getName());
            String fileName = file.getFilename();
            boolean named = !isDocument && fileName != null && !fileName.isBlank();
            return new Part(named ? fileName : file.getName(), file.getName(), file.getContentType(), file.get());
        }
        return new Part(data.getName(), null, ((HttpData) data).get());
    }

    private static IntakeException notMultipart(Exception e) {
        return IntakeException.of(
                IntakeException.Kind.MALFORMED,
                WHERE,
                "is not multipart/form-data with a boundary (" + e.getMessage()
                        + "); send the part 'result' with the JSON document, and CSV, Touchstone or ZIP"
                        + " files beside it");
    }
}
