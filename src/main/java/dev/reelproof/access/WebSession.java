package dev.reelproof.access;

import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A sign-in at a browser that lasts. It belongs to an account, whose state is read anew at each request, or to a person of the
 * company's identity provider, with the roles of the sign-in.
 *
 * @param digest the digest of its secret
 * @param csrf what its changes must carry
 * @param name the person
 * @param displayName how others read of the person
 * @param roles the roles held
 * @param ofCompany whether the company's identity provider signed the person in
 * @param active whether the person may sign in still
 * @param demo whether the account is one of the demo's
 * @param lastSeen when it was last used, nearly
 * @param expires when it ends, however busy
 * @param ended when it was ended, if it was
 */
public record WebSession(
        String digest,
        String csrf,
        String name,
        String displayName,
        Set<Role> roles,
        boolean ofCompany,
        boolean active,
        boolean demo,
        Instant lastSeen,
        Instant expires,
        @Nullable Instant ended) {

    /** So that not every request writes: a session may end a sixtieth of the idle time early, never late. */
    private static final int SEEN_STEPS = 60;

    public WebSession {
        roles = Set.copyOf(roles);
    }

    /**
     * Whether it may be used.
     *
     * @param idle how long it lasts unused
     * @param isDemo whether this installation is the demo
     * @param hasProvider whether the company's identity provider signs in here
     */
    public boolean isValid(Instant now, Duration idle, boolean isDemo, boolean hasProvider) {
        boolean lasts = ended == null && now.isBefore(expires) && lastSeen.isAfter(now.minus(idle));
        return lasts && (ofCompany ? hasProvider : active && (!demo || isDemo));
    }

    /**
     * Whether its use is to be written down.
     *
     * @param idle how long it lasts unused
     */
    public boolean isSeenAnew(Instant now, Duration idle) {
        return lastSeen.isBefore(now.minus(idle.dividedBy(SEEN_STEPS)));
    }

    @Override
    public String toString() {
        return "session of " + name;
    }
}
