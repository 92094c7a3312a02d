/** HTTP of certificates and their verification. */
package dev.reelproof.api.certificate;
