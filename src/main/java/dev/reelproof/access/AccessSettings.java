package dev.reelproof.access;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** The settings of the doors. */
@ConfigMapping(prefix = "reelproof")
public interface AccessSettings {

    /** The data folder; the demo's token lies there. */
    @WithDefault(".data")
    Path data();

    /** Whether this is the demo: only then the demo's accounts and token open anything. */
    @WithDefault("false")
    boolean demo();

    /** The plants that are served. */
    @WithDefault("north")
    List<String> plants();

    /** The plant that is meant where none is named; the first when not stated. */
    Optional<String> homePlant();

    /** The plant whose audit trail tells of what concerns the whole installation. */
    default String trail() {
        return homePlant().orElse(plants().get(0));
    }

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

        /** Of bcrypt: each step doubles the time that a sign-in, and a guess, costs. From 4 to 31. */
        @WithDefault("12")
        int cost();
    }
}
