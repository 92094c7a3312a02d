package dev.reelproof.app.certificate;

import dev.reelproof.certificate.IssuedCertificate;
import dev.reelproof.certificate.life.CertificateLife;

/**
 * A certificate with what became of it.
 *
 * @param certificate the certificate
 * @param life what became of it until now
 */
public record LivingCertificate(IssuedCertificate certificate, CertificateLife life) {}
