package dev.reelproof.access;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A person as the company's identity provider described it.
 *
 * @param issuer the provider
 * @param subject the person, at the provider; never another's
 * @param preferredName what the person is called at sign-in; the provider may let it change
 * @param displayName how others read of the person
 * @param groups what the person belongs to
 */
public record CompanyPerson(
        String issuer, String subject, String preferredName, @Nullable String displayName, Set<String> groups) {
    public CompanyPerson {
        groups = Set.copyOf(groups);
    }

    @Override
    public String toString() {
        return "CompanyPerson";
    }
}
