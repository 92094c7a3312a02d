package dev.reelproof.store.result;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/** Originals as they are kept. */
final class Gzip {
    private Gzip() {}

    static byte[] compressed(byte[] bytes) {
        ByteArrayOutputStream compressed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(compressed)) {
            gzip.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException("a part of an upload could not be compressed", e);
        }
        return compressed.toByteArray();
    }

    static byte[] restored(byte[] compressed) {
        try (GZIPInputStream gzip = new GZIPInputStream(new ByteArrayInputStream(compressed))) {
            return gzip.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("a kept part of an upload could not be read", e);
        }
    }
}
