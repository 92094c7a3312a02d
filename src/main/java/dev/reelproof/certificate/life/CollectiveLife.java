package dev.reelproof.certificate.life;

import dev.reelproof.wording.CertificateWords;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What became of a collective certificate: it is worth what the certificates that it names are worth, and current only while every one
 * of them is.
 *
 * @param named the certificates that it names
 */
public record CollectiveLife(List<Named> named) {
    /** What makes the whole of no worth, the gravest first. */
    private static final List<CertificateState> GRAVEST_FIRST =
            List.of(CertificateState.WITHDRAWN, CertificateState.SUPERSEDED, CertificateState.IN_QUESTION);

    public CollectiveLife {
        named = List.copyOf(named);
        if (named.isEmpty()) {
            throw new IllegalArgumentException("a collective certificate names at least one certificate");
        }
    }

    /**
     * A certificate that it names.
     *
     * @param certificate its number
     * @param issue which issue of it
     * @param reel the reel that it stands for
     * @param product the code of the reel's product
     * @param life what became of it
     */
    public record Named(String certificate, int issue, String reel, String product, CertificateLife life) {}

    /** The gravest state of those that it names. */
    public CertificateState state() {
        return GRAVEST_FIRST.stream()
                .filter(state -> named.stream().anyMatch(one -> one.life().state() == state))
                .findFirst()
                .orElse(CertificateState.CURRENT);
    }

    /** Whether it may be relied on. */
    public boolean isCurrent() {
        return state() == CertificateState.CURRENT;
    }

    /** The state in a sentence; which reels it is about stands in the reasons. */
    public String sentence(CertificateWords words) {
        return isCurrent()
                ? words.collectiveCurrent(named.size())
                : words.collectiveNotCurrent((int) notCurrent().count(), named.size());
    }

    /** Which of its certificates are not current, and why, for those who work at the plant. */
    public List<String> reasons(CertificateWords words) {
        return notCurrent()
                .map(one -> reason(one, one.life().reasons(words), words))
                .toList();
    }

    /** The same for whoever holds it. */
    public List<String> publicReasons(CertificateWords words) {
        return notCurrent()
                .map(one -> reason(one, one.life().publicReasons(words), words))
                .toList();
    }

    private Stream<Named> notCurrent() {
        return named.stream().filter(one -> !one.life().isCurrent());
    }

    private static String reason(Named one, List<String> reasons, CertificateWords words) {
        String why = Stream.concat(Stream.of(one.life().sentence(words)), reasons.stream())
                .collect(Collectors.joining(" "));
        return words.collectiveReason(
                one.reel(), one.certificate(), words.state(one.life().state().word()), why);
    }
}
