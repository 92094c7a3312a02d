package dev.reelproof.app.access;

import dev.reelproof.access.Password;
import dev.reelproof.access.Secrets;
import io.quarkus.elytron.security.common.BcryptUtil;
import jakarta.inject.Singleton;
import org.jspecify.annotations.Nullable;

/** Hashes passwords with bcrypt, with a salt each. */
@Singleton
public class PasswordHashing {
    /** The least that bcrypt takes; for passwords that are no secret. */
    private static final int LEAST_COST = 4;

    private final int cost;
    private final String hashOfNobody;

    PasswordHashing(AccessSettings settings) {
        this.cost = settings.password().cost();
        this.hashOfNobody = BcryptUtil.bcryptHash(Secrets.random(), cost);
    }

    /** The hash that is kept of a password. */
    public String hash(Password password) {
        return BcryptUtil.bcryptHash(password.text(), cost);
    }

    /** The hash of a password that is printed for everybody to read. */
    public static String hashPublic(Password password) {
        return BcryptUtil.bcryptHash(password.text(), LEAST_COST);
    }

    /**
     * Whether it is this password.
     *
     * @param hash as kept; absent when the account does not exist, which takes the same time
     */
    public boolean matches(String sent, @Nullable String hash) {
        boolean same = BcryptUtil.matches(whole(sent), hash == null ? hashOfNobody : hash);
        return hash != null && same;
    }

    /** A password that is too long was never set; cut by bcrypt it could match one that was. */
    private static String whole(String sent) {
        try {
            return Password.of(sent).text();
        } catch (IllegalArgumentException e) {
            return "";
        }
    }
}
