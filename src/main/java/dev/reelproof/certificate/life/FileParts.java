package dev.reelproof.certificate.life;

import java.util.List;
import java.util.Map;

/**
 * What the file of a certificate is made of, by digests.
 *
 * @param pages what is drawn on each page
 * @param attachments the attached files, by name
 */
public record FileParts(List<String> pages, Map<String, String> attachments) {
    public FileParts {
        pages = List.copyOf(pages);
        attachments = Map.copyOf(attachments);
    }
}
