package dev.reelproof.store.certificate;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.certificate.CertificateContent;
import dev.reelproof.certificate.CollectiveContent;
import dev.reelproof.certificate.NumberedPaper;

/** Writes and reads what a certificate says as it is kept. */
final class CertificateJson {
    private static final ObjectMapper JSON = new ObjectMapper();

    private CertificateJson() {}

    static String write(NumberedPaper content) {
        try {
            return JSON.writeValueAsString(content);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("certificate " + content.number() + " cannot be kept", e);
        }
    }

    static CertificateContent read(String json) {
        return read(json, CertificateContent.class);
    }

    static CollectiveContent readCollective(String json) {
        return read(json, CollectiveContent.class);
    }

    private static <T> T read(String json, Class<T> type) {
        try {
            return JSON.readValue(json, type);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a kept certificate cannot be read: " + e.getOriginalMessage(), e);
        }
    }
}
