package dev.reelproof.genealogy.hold;

/** A hold is not released so; the message says why and what to do instead. */
public class ReleaseRefusedException extends RuntimeException {
    private final Reason reason;

    /** Why a release is refused. */
    public enum Reason {
        /** The hold was released before, whole. */
        RELEASED_BEFORE,
        /** Whoever wants to release it placed it. */
        OWN_HOLD,
        /** A program wants to release it, not a person. */
        NO_PERSON,
        /** The range does not lie on what is held. */
        NOT_ON_HELD
    }

    ReleaseRefusedException(Reason reason, String message) {
        super(message);
        this.reason = reason;
    }

    /** Why. */
    public Reason reason() {
        return reason;
    }
}
