package dev.reelproof.access;

import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Who asks for something.
 *
 * @param kind what kind of caller
 * @param name the name of the account or token; {@value #UNKNOWN} when nobody signed in
 * @param plant the one plant that the caller may act at; every plant when none is named
 * @param roles the roles held
 * @param from the network address that the request came from, if there was a request
 */
public record Caller(Kind kind, String name, @Nullable String plant, Set<Role> roles, @Nullable String from) {
    /** The name of a caller who did not sign in. */
    public static final String UNKNOWN = "unknown";

    private static final String SERVICE_NAME = "reelproof";

    /** The service itself, at work without a request. */
    public static final Caller SERVICE = new Caller(Kind.SERVICE, SERVICE_NAME, null, Set.of(), null);

    /** Kinds of caller. */
    public enum Kind {
        PERSON("person"),
        TOKEN("token"),
        SERVICE("service"),
        NONE("none");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The kind as answers spell it. */
        public String word() {
            return word;
        }
    }

    public Caller {
        roles = Set.copyOf(roles);
    }

    /** A caller who did not sign in. */
    public static Caller nobody(@Nullable String from) {
        return new Caller(Kind.NONE, UNKNOWN, null, Set.of(), from);
    }

    /**
     * Refuses a caller who may not do this at a plant.
     *
     * @throws NotAuthenticatedException when nobody signed in
     * @throws PermissionDeniedException when no role held may, or the caller belongs to another plant
     */
    public void require(Action action, String atPlant) {
        require(action);
        requirePlant(atPlant);
    }

    /**
     * Refuses a caller who may not do this, wherever it is.
     *
     * @throws NotAuthenticatedException when nobody signed in
     * @throws PermissionDeniedException when no role held may
     */
    public void require(Action action) {
        if (kind == Kind.NONE) {
            throw new NotAuthenticatedException("Sign in first, or send an API token as 'Authorization: Bearer …'.");
        }
        if (!action.isAllowedTo(roles)) {
            throw new PermissionDeniedException("This needs the role " + action.rolesInWords() + ".");
        }
    }

    /**
     * Refuses a caller who may not act at a plant.
     *
     * @throws PermissionDeniedException when the caller belongs to another plant
     */
    public void requirePlant(String atPlant) {
        if (plant != null && !plant.equals(atPlant)) {
            throw new PermissionDeniedException("You may act at plant " + plant + ", not at plant " + atPlant + ".");
        }
    }

    /**
     * Refuses a caller who may not act at every plant.
     *
     * @throws PermissionDeniedException when the caller belongs to one plant
     */
    public void requireEveryPlant() {
        if (plant != null) {
            throw new PermissionDeniedException(
                    "This concerns every plant, and you may act at plant " + plant + " alone.");
        }
    }

    /**
     * Refuses a caller who is no person: no script asks for, or decides on, what needs two persons.
     *
     * @throws PermissionDeniedException when the caller is no person
     */
    public void requirePerson() {
        if (kind != Kind.PERSON) {
            throw new PermissionDeniedException(
                    "Approvals are between persons; sign in with an account, not with an API token.");
        }
    }

    /**
     * The network address that the request came from.
     *
     * @throws NullPointerException when there was no request
     */
    public String address() {
        return Objects.requireNonNull(from, "only a request comes from an address");
    }

    /** Whether a name means this person: names differ neither by case nor by the form of their characters. */
    public boolean isPerson(String other) {
        return kind == Kind.PERSON && AccountName.fold(name).equals(AccountName.fold(other));
    }

    /**
     * Whether this is the caller of that kind and name, as {@link #isPerson} compares names.
     *
     * @param kindWord the kind in its word
     */
    public boolean is(String kindWord, String other) {
        return kind.word().equals(kindWord) && AccountName.fold(name).equals(AccountName.fold(other));
    }
}
