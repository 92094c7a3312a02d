package dev.reelproof.app.access;

import dev.reelproof.access.Role;
import java.util.List;

/**
 * One of the demo's accounts, whose password is printed for everybody. It is good for nothing outside the demo.
 *
 * @param name what to sign in with
 * @param displayName how others read of it
 * @param role the one role held
 * @param password no secret
 */
public record DemoAccount(String name, String displayName, Role role, String password) {

    /** The demo's accounts, one for each role. */
    public static final List<DemoAccount> ALL = List.of(
            new DemoAccount("demo-technician", "Technician (demo)", Role.TECHNICIAN, "demo technician 1"),
            new DemoAccount("demo-service", "Customer service (demo)", Role.CUSTOMER_SERVICE, "demo service 2"),
            new DemoAccount("demo-engineer", "Engineer (demo)", Role.ENGINEER, "demo engineer 3"),
            new DemoAccount("demo-quality", "Quality manager (demo)", Role.QUALITY_MANAGER, "demo quality 4"),
            new DemoAccount("demo-admin", "Administrator (demo)", Role.ADMINISTRATOR, "demo administrator 5"));
}
