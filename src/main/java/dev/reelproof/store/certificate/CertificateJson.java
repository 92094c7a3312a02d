package dev.reelproof.store.certificate;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.certificate.CertificateContent;

/** Writes and reads what a certificate says as it is kept. */
final class CertificateJson {
    private static final ObjectMapper JSON = new ObjectMapper();

    private CertificateJson() {}

    static String write(CertificateContent content) {
        try {
            return JSON.writeValueAsString(content);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("certificate " + content.number() + " cannot be kept", e);
        }
    }

    static CertificateContent read(String json) {
        try {
            return JSON.readValue(json, CertificateContent.class);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a kept certificate cannot be read: " + e.getOriginalMessage(), e);
        }
    }
}
