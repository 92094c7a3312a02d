package dev.reelproof.access;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import io.smallrye.config.WithParentName;
import java.nio.file.Path;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

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

    /** Signing in with the company's identity provider. */
    Oidc oidc();

    /** Whether a proxy that ends TLS stands before the service, and tells it address and scheme of the browser. */
    @WithDefault("false")
    boolean behindProxy();

    /** The proxies that are believed. */
    @WithDefault("127.0.0.1")
    List<String> trustedProxies();

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

    /** Signing in with the company's identity provider. */
    interface Oidc {

        /** Whether it is offered; the provider itself is told with {@code quarkus.oidc.*}. */
        @WithParentName
        @WithDefault("false")
        boolean on();

        /** The provider's groups that give each role. */
        Roles roles();
    }

    /** The provider's groups that give each role; where none is stated, the group that is called like the role. */
    interface Roles {

        @WithDefault("technician")
        List<String> technician();

        @WithDefault("customer-service")
        List<String> customerService();

        @WithDefault("engineer")
        List<String> engineer();

        @WithDefault("quality-manager")
        List<String> qualityManager();

        @WithDefault("administrator")
        List<String> administrator();

        /** The roles that these groups give; groups that are not stated give none. */
        default Set<Role> of(Set<String> groups) {
            Set<Role> roles = EnumSet.noneOf(Role.class);
            for (Role role : Role.values()) {
                if (groupsOf(role).stream().anyMatch(groups::contains)) {
                    roles.add(role);
                }
            }
            return roles;
        }

        private List<String> groupsOf(Role role) {
            return switch (role) {
                case TECHNICIAN -> technician();
                case CUSTOMER_SERVICE -> customerService();
                case ENGINEER -> engineer();
                case QUALITY_MANAGER -> qualityManager();
                case ADMINISTRATOR -> administrator();
            };
        }
    }
}
