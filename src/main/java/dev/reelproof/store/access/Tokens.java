package dev.reelproof.store.access;

import dev.reelproof.access.Role;
import dev.reelproof.access.Secrets;
import dev.reelproof.access.Token;
import dev.reelproof.access.TokenSecret;
import dev.reelproof.digest.Sha256;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.hibernate.Session;
import org.jspecify.annotations.Nullable;

/** The tokens of stations and scripts. Of a secret only its digest is kept. */
@ApplicationScoped
public class Tokens {
    private static final String SELECT =
            """
            select id, name, array_to_string(roles, ','), plant, demo, created, expires, revoked, secret_sha256
            from api_token""";

    private final Session session;

    Tokens(Session session) {
        this.session = session;
    }

    record TokenRow(
            String id,
            String name,
            String roles,
            @Nullable String plant,
            boolean demo,
            Instant created,
            @Nullable Instant expires,
            @Nullable Instant revoked,
            String digest) {
        Token token() {
            return new Token(id, name, Role.read(roles), plant, demo, created, expires, revoked);
        }

        boolean isOf(TokenSecret secret) {
            return Secrets.same(digest, Sha256.hex(secret.text()));
        }
    }

    /** Keeps a new token, and the digest of its secret. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void insert(Token token, TokenSecret secret) {
        session.createNativeMutationQuery(
                        """
                        insert into api_token (id, name, secret_sha256, roles, plant, demo, created, expires)
                        values (:id, :name, :secret, string_to_array(:roles, ','), cast(:plant as text), :demo, :now,
                                cast(:expires as timestamptz))""")
                .setParameter("id", token.id())
                .setParameter("name", token.name())
                .setParameter("secret", Sha256.hex(secret.text()))
                .setParameter("roles", Role.joined(token.roles()))
                .setParameter("plant", token.plant())
                .setParameter("demo", token.demo())
                .setParameter("now", token.created())
                .setParameter("expires", token.expires(), Instant.class)
                .executeUpdate();
    }

    /** All tokens, newest first, those that ended too. */
    @Transactional
    public List<Token> all() {
        return session.createNativeQuery(SELECT + " order by created desc, id", TokenRow.class).getResultList().stream()
                .map(TokenRow::token)
                .toList();
    }

    /** The token of that id. */
    @Transactional
    public Optional<Token> byId(String id) {
        return row(id).map(TokenRow::token);
    }

    /**
     * Keeps that a token is revoked.
     *
     * @return whether it was not before
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public boolean revoke(Token token, Instant now) {
        int revoked = session.createNativeMutationQuery(
                        "update api_token set revoked = :now where id = :id and revoked is null")
                .setParameter("now", now)
                .setParameter("id", token.id())
                .executeUpdate();
        return revoked > 0;
    }

    /**
     * The token of a secret, whether it may be used or not. Every request with a token asks it: it runs without a
     * transaction, whose beginning and end would be round trips to the database of their own.
     */
    @ActivateRequestContext
    public Optional<Token> find(TokenSecret secret) {
        return row(secret.tokenId()).filter(row -> row.isOf(secret)).map(TokenRow::token);
    }

    private Optional<TokenRow> row(String id) {
        return session.createNativeQuery(SELECT + " where id = :id", TokenRow.class)
                .setParameter("id", id)
                .uniqueResultOptional();
    }
}
