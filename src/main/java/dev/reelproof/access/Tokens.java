package dev.reelproof.access;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hibernate.Session;

/** The tokens of stations and scripts. A secret is shown once; only its digest is kept. */
@ApplicationScoped
public class Tokens {
    /** What every secret begins with, so that one that lies about is known for what it is. */
    static final String PREFIX = "reelproof_";

    private static final int ID_DIGITS = 16;
    private static final Pattern SECRET =
            Pattern.compile(PREFIX + "([0-9a-f]{" + ID_DIGITS + "})_([A-Za-z0-9_-]{" + Secrets.LENGTH + "})");
    private static final String COLUMNS =
            "id, name, array_to_string(roles, ','), plant, demo, created, expires, revoked, secret_sha256";

    private final Session session;
    private final AccessSettings settings;
    private final Audit audit;
    private final Clock clock;

    Tokens(Session session, AccessSettings settings, Audit audit, Clock clock) {
        this.session = session;
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
    Made make(String trail, String name, Set<Role> roles, String plant, Instant expires, boolean demo) {
        Token token = new Token(Secrets.randomId(ID_DIGITS), name, roles, plant, demo, clock.instant(), expires, null);
        String secret = PREFIX + token.id() + "_" + Secrets.random();
        session.createNativeMutationQuery(
                        """
                        insert into api_token (id, name, secret_sha256, roles, plant, demo, created, expires)
                        values (:id, :name, :secret, string_to_array(:roles, ','), cast(:plant as text), :demo, :now,
                                cast(:expires as timestamptz))""")
                .setParameter("id", token.id())
                .setParameter("name", name)
                .setParameter("secret", Secrets.sha256(secret))
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
    @Transactional
    public List<Token> all() {
        return session
                .createNativeQuery("select " + COLUMNS + " from api_token order by created desc, id", Object[].class)
                .getResultList()
                .stream()
                .map(Tokens::token)
                .toList();
    }

    @Transactional
    public Optional<Token> byId(String id) {
        return row(id).map(Tokens::token);
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

    /** The token of a secret, when it still opens anything. */
    @Transactional
    Optional<Token> find(String secret) {
        Matcher parts = SECRET.matcher(secret);
        if (!parts.matches()) {
            return Optional.empty();
        }
        Instant now = clock.instant();
        return row(parts.group(1))
                .filter(row -> Secrets.same((String) row[8], Secrets.sha256(secret)))
                .map(Tokens::token)
                .filter(token -> token.revoked() == null)
                .filter(token -> token.expires() == null || now.isBefore(token.expires()))
                .filter(token -> !token.demo() || settings.demo());
    }

    private Optional<Object[]> row(String id) {
        return session.createNativeQuery("select " + COLUMNS + " from api_token where id = :id", Object[].class)
                .setParameter("id", id)
                .uniqueResultOptional();
    }

    private static String subject(Token token) {
        return "token/" + token.id();
    }

    private static Token token(Object[] row) {
        return new Token(
                (String) row[0],
                (String) row[1],
                Role.read((String) row[2]),
                (String) row[3],
                (Boolean) row[4],
                (Instant) row[5],
                (Instant) row[6],
                (Instant) row[7]);
    }
}
