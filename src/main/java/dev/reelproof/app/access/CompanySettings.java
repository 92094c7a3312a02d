package dev.reelproof.app.access;

import dev.reelproof.access.Role;
import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import io.smallrye.config.WithParentName;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** The settings of what a plant puts around the service: its identity provider, and the proxy that ends TLS. */
@ConfigMapping(prefix = "reelproof")
public interface CompanySettings {

    /** Signing in with the company's identity provider. */
    Oidc oidc();

    /** Whether a proxy that ends TLS stands before the service, and tells it address and scheme of the browser. */
    @WithDefault("false")
    boolean behindProxy();

    /** The proxies that are believed. */
    @WithDefault("127.0.0.1")
    List<String> trustedProxies();

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
