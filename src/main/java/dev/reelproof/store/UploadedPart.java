package dev.reelproof.store;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;

/** A part of an upload, as received. Immutable. */
public final class UploadedPart {
    private final String name;
    private final String mediaType;
    private final byte[] bytes;

    /**
     * @param name its file or part name
     * @param mediaType as sent
     * @param bytes as sent
     */
    public UploadedPart(String name, String mediaType, byte[] bytes) {
        this.name = name;
        this.mediaType = mediaType;
        this.bytes = bytes.clone();
    }

    public String name() {
        return name;
    }

    public String mediaType() {
        return mediaType;
    }

    public byte[] bytes() {
        return bytes.clone();
    }

    public int size() {
        return bytes.length;
    }

    /** The SHA-256 digest of the bytes, hexadecimal. */
    public String sha256() {
        return sha256(bytes);
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    byte[] gzipped() {
        ByteArrayOutputStream compressed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(compressed)) {
            gzip.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException("part " + name + " could not be compressed", e);
        }
        return compressed.toByteArray();
    }

    static byte[] unzipped(byte[] gzipped) {
        try (GZIPInputStream gzip = new GZIPInputStream(new ByteArrayInputStream(gzipped))) {
            return gzip.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("a kept part could not be read", e);
        }
    }
}
