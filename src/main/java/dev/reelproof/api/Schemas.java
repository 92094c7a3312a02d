package dev.reelproof.api;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The JSON Schemas that the program publishes. */
public final class Schemas {
    private Schemas() {}

    public static byte[] bytes(String name) {
        try (InputStream in = Schemas.class.getResourceAsStream("/schemas/" + name + ".schema.json")) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("schema " + name + " cannot be read", e);
        }
    }
}
