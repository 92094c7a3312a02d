package dev.reelproof.access;

import io.quarkus.elytron.security.common.BcryptUtil;
import jakarta.inject.Singleton;

/** Passwords as they are kept: by bcrypt, with a salt each. */
@Singleton
public class PasswordHashing {
    /** What bcrypt takes at least; for passwords that are no secret. */
    private static final int LEAST_COST = 4;

    private final int cost;
    private final String nobodys;

    PasswordHashing(AccessSettings settings) {
        this.cost = settings.password().cost();
        this.nobodys = BcryptUtil.bcryptHash(Secrets.random(), cost);
    }

    public String hash(Password password) {
        return BcryptUtil.bcryptHash(password.text(), cost);
    }

    /** Of a password that is printed for everybody to read. */
    public static String hashPublic(Password password) {
        return BcryptUtil.bcryptHash(password.text(), LEAST_COST);
    }

    /**
     * Whether it is this password.
     *
     * @param hash as kept; null when the account does not exist, which takes the same time
     */
    public boolean matches(String sent, String hash) {
        boolean same = BcryptUtil.matches(whole(sent), hash == null ? nobodys : hash);
        return hash != null && same;
    }

    /** One that is too long was never set; cut by bcrypt it could match one that was. */
    private static String whole(String sent) {
        try {
            return Password.of(sent).text();
        } catch (IllegalArgumentException e) {
            return "";
        }
    }
}
