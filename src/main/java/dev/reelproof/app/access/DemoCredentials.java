package dev.reelproof.app.access;

import dev.reelproof.access.AccessSettings;
import dev.reelproof.access.AccountName;
import dev.reelproof.access.Password;
import dev.reelproof.access.PasswordHashing;
import dev.reelproof.access.Role;
import dev.reelproof.store.access.Accounts;
import dev.reelproof.store.access.Tokens;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.hibernate.Session;

/** The doors of the demo: accounts whose passwords are printed for everybody, and a token. They open nothing outside the demo. */
@ApplicationScoped
public class DemoCredentials {
    /** The demo's accounts, one for each role. */
    public static final List<Person> PERSONS = List.of(
            new Person("demo-technician", "Technician (demo)", Role.TECHNICIAN, "demo technician 1"),
            new Person("demo-service", "Customer service (demo)", Role.CUSTOMER_SERVICE, "demo service 2"),
            new Person("demo-engineer", "Engineer (demo)", Role.ENGINEER, "demo engineer 3"),
            new Person("demo-quality", "Quality manager (demo)", Role.QUALITY_MANAGER, "demo quality 4"),
            new Person("demo-admin", "Administrator (demo)", Role.ADMINISTRATOR, "demo administrator 5"));

    private static final String FILE = "demo-token";
    private static final String TOKEN_NAME = "demo";

    private final Session session;
    private final Accounts accounts;
    private final Tokens tokens;
    private final AccessSettings settings;

    public DemoCredentials(Session session, Accounts accounts, Tokens tokens, AccessSettings settings) {
        this.session = session;
        this.accounts = accounts;
        this.tokens = tokens;
        this.settings = settings;
    }

    /**
     * One of the demo's accounts.
     *
     * @param name what to sign in with
     * @param displayName how others read of it
     * @param role the one role held
     * @param password no secret
     */
    public record Person(String name, String displayName, Role role, String password) {}

    /** Where the demo's token lies, for scripts to read. */
    public Path tokenFile() {
        return settings.data().resolve(FILE);
    }

    /** The demo's token, of all roles at every plant. */
    public String token() {
        try {
            return Files.readString(tokenFile()).strip();
        } catch (IOException e) {
            throw new UncheckedIOException("the demo's token cannot be read from " + tokenFile(), e);
        }
    }

    /**
     * Makes accounts and token, or makes them again what they were.
     *
     * @param trail the plant whose audit trail tells of it
     */
    @Transactional
    public void open(String trail) {
        for (Person person : PERSONS) {
            AccountName name = AccountName.of(person.name());
            String hash = PasswordHashing.hashPublic(Password.of(person.password()));
            if (accounts.insert(name, person.displayName(), Set.of(person.role()), hash, true)
                    .isEmpty()) {
                session.createNativeMutationQuery(
                                """
                                update account set password_hash = :hash, roles = string_to_array(:role, ','), active = true
                                where key = :key and demo""")
                        .setParameter("hash", hash)
                        .setParameter("role", person.role().word())
                        .setParameter("key", name.key())
                        .executeUpdate();
            }
        }
        if (!Files.exists(tokenFile()) || tokens.find(token()).isEmpty()) {
            keep(tokens.make(trail, TOKEN_NAME, EnumSet.allOf(Role.class), null, null, true)
                    .secret());
        }
    }

    /** Beside the file first, so that nobody reads half of it, and never with rights for others. */
    private void keep(String secret) {
        try {
            Files.createDirectories(settings.data());
            boolean posix = settings.data()
                    .getFileSystem()
                    .supportedFileAttributeViews()
                    .contains("posix");
            FileAttribute<?>[] mine = posix
                    ? new FileAttribute<?>[] {
                        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                    }
                    : new FileAttribute<?>[0];
            Path beside = Files.createTempFile(settings.data(), FILE, null, mine);
            Files.write(beside, (secret + "\n").getBytes(StandardCharsets.UTF_8));
            Files.move(beside, tokenFile(), StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new UncheckedIOException("the demo's token cannot be kept in " + tokenFile(), e);
        }
    }
}
