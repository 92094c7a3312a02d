package dev.reelproof.app.certificate;

import dev.reelproof.certificate.IssuedCollective;
import dev.reelproof.certificate.life.CollectiveLife;

/**
 * A collective certificate with what became of it.
 *
 * @param certificate the certificate
 * @param life what became of those that it names
 */
public record LivingCollective(IssuedCollective certificate, CollectiveLife life) {}
