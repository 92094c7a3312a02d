package dev.reelproof.api.access;

import jakarta.ws.rs.core.NewCookie;

/** The cookie that holds a session's secret. */
public final class SessionCookie {
    public static final String NAME = "reelproof-session";

    private SessionCookie() {}

    /** Not readable by scripts, sent over secure connections alone, and never by other sites' pages. */
    static NewCookie.Builder of(String secret) {
        return new NewCookie.Builder(NAME)
                .value(secret)
                .path("/")
                .httpOnly(true)
                .secure(true)
                .sameSite(NewCookie.SameSite.STRICT);
    }
}
