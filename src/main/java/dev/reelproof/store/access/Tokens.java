package dev.reelproof.store.access;

import dev.reelproof.access.AccessSettings;
import dev.reelproof.access.Role;
import dev.reelproof.access.Secrets;
import dev.reelproof.access.Token;
import dev.reelproof.digest.Sha256;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.hibernate.Session;

/** The tokens of stations and scripts. A secret is shown once; only its digest is kept. */
@ApplicationScoped
public class Tokens {
    /** What every secret begins with, so that one that lies about is known for what it is. */
    public static final String PREFIX = "reelproof_";

    private static final int ID_DIGITS = 16;
    private static final Pattern SECRET =
            Pattern.compile(PREFIX + "([0-9a-f]{" + ID_DIGITS + "})_([A-Za-z0-9_-]{" + Secrets.LENGTH + "})");
    private static final String COLUMNS =
            "id, name, array_to_string(roles, ','), plant, demo, created, expires, revoked, secret_sha256";

    private final Session session;
    private final DataSource database;
    private final AccessSettings settings;
    private final AuditTrail audit;
    private final Clock clock;

    public Tokens(Session session, DataSource database, AccessSettings settings, AuditTrail audit, Clock clock) {
        this.session = session;
        this.database = database;
        this.settings = settings;
        this.audit = audit;
        this.clock = clock;
    }

    /** A token and its secret, which is not to be had again. */
    public record Made(Token token, String secret) {
        @Override
        public String toString() {
            return token.toString();
        }
    }

    /**
     * Makes a token.
     *
     * @param trail the plant whose audit trail tells of it
     * @param plant the one plant that it may act at; null for every plant
     * @param expires when it ends; null when it does not
     */
    @Transactional
    public Made make(String trail, String name, Set<Role> roles, String plant, Instant expires) {
        return make(trail, name, roles, plant, expires, false);
    }

    @Transactional
    public Made make(String trail, String name, Set<Role> roles, String plant, Instant expires, boolean demo) {
        Token token = new Token(Secrets.randomId(ID_DIGITS), name, roles, plant, demo, clock.instant(), expires, null);
        String secret = PREFIX + token.id() + "_" + Secrets.random();
        session.createNativeMutationQuery(
                        """
                        insert into api_token (id, name, secret_sha256, roles, plant, demo, created, expires)
                        values (:id, :name, :secret, string_to_array(:roles, ','), cast(:plant as text), :demo, :now,
                                cast(:expires as timestamptz))""")
                .setParameter("id", token.id())
                .setParameter("name", name)
                .setParameter("secret", Sha256.hex(secret))
                .setParameter("roles", Role.joined(roles))
                .setParameter("plant", plant)
                .setParameter("demo", demo)
                .setParameter("now", token.created())
                .setParameter("expires", expires)
                .executeUpdate();
        audit.write(
                trail,
                "token-made",
                subject(token),
                null,
                Map.of(
                        "name",
                        name,
                        "roles",
                        Role.joined(roles),
                        "plant",
                        plant == null ? "every" : plant,
                        "expires",
                        expires == null ? "never" : expires.toString()));
        return new Made(token, secret);
    }

    /** All tokens, newest first, those that ended too. */
    public List<Token> all() {
        return read("order by created desc, id").stream().map(Kept::token).toList();
    }

    public Optional<Token> byId(String id) {
        return kept(id).map(Kept::token);
    }

    /**
     * Revokes a token, at once and for good; one that was revoked stays so.
     *
     * @param trail the plant whose audit trail tells of it
     */
    @Transactional
    public void revoke(String trail, Token token, String reason) {
        int revoked = session.createNativeMutationQuery(
                        "update api_token set revoked = :now where id = :id and revoked is null")
                .setParameter("now", clock.instant())
                .setParameter("id", token.id())
                .executeUpdate();
        if (revoked > 0) {
            audit.write(trail, "token-revoked", subject(token), reason, Map.of("name", token.name()));
        }
    }

    /** The token of a secret, when it still opens anything. Asked at every request: one round trip to the database. */
    public Optional<Token> find(String secret) {
        Matcher parts = SECRET.matcher(secret);
        if (!parts.matches()) {
            return Optional.empty();
        }
        Instant now = clock.instant();
        return kept(parts.group(1))
                .filter(kept -> Secrets.same(kept.digest, Sha256.hex(secret)))
                .map(Kept::token)
                .filter(token -> token.revoked() == null)
                .filter(token -> token.expires() == null || now.isBefore(token.expires()))
                .filter(token -> !token.demo() || settings.demo());
    }

    /** A token with the digest of its secret. */
    private record Kept(Token token, String digest) {}

    private Optional<Kept> kept(String id) {
        return read("where id = ?", id).stream().findFirst();
    }

    /** Reads without opening a transaction, whose beginning and end would be round trips of their own. */
    private List<Kept> read(String which, String... parameters) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement =
                        connection.prepareStatement("select " + COLUMNS + " from api_token " + which)) {
            for (int i = 0; i < parameters.length; i++) {
                statement.setString(i + 1, parameters[i]);
            }
            List<Kept> found = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    Token token = new Token(
                            row.getString(1),
                            row.getString(2),
                            Role.read(row.getString(3)),
                            row.getString(4),
                            row.getBoolean(5),
                            instant(row, 6),
                            instant(row, 7),
                            instant(row, 8));
                    found.add(new Kept(token, row.getString(9)));
                }
            }
            return found;
        } catch (SQLException e) {
            throw new IllegalStateException("the tokens could not be read", e);
        }
    }

    private static Instant instant(ResultSet row, int column) throws SQLException {
        OffsetDateTime time = row.getObject(column, OffsetDateTime.class);
        return time == null ? null : time.toInstant();
    }

    private static String subject(Token token) {
        return "token/" + token.id();
    }
}
