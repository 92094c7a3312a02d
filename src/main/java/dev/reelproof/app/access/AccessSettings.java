package dev.reelproof.app.access;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;
import java.util.Optional;

/** The settings of accounts and sessions. */
@ConfigMapping(prefix = "reelproof")
public interface AccessSettings {

    /** The secret of the set-up link, when the plant chooses it; else one is made and printed. */
    Optional<String> setupToken();

    /** How long a sign-in lasts. */
    Session session();

    /** How passwords are hashed. */
    Password password();

    /** How long a sign-in lasts. */
    interface Session {

        /** However busy. */
        @WithDefault("12H")
        Duration longest();

        /** Without a request. */
        @WithDefault("60M")
        Duration idle();
    }

    /** How passwords are hashed. */
    interface Password {

        /** Of bcrypt: each step doubles the time of a sign-in, and of an attempt to guess. From 4 to 31. */
        @WithDefault("12")
        int cost();
    }
}
