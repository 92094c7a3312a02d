package dev.reelproof.pdf.check;

import java.util.List;

/** What all statements together come to. */
public enum Conclusion {
    GENUINE(0, "Unchanged since the plant signed it. Whether it is still current, only the service knows."),
    SIGNER_OPEN(3, "Unchanged since it was signed; it is not shown that the plant signed it."),
    NOT_AS_ISSUED(1, "NOT AS IT WAS ISSUED: do not rely on this document.");

    private final int exitCode;
    private final String words;

    Conclusion(int exitCode, String words) {
        this.exitCode = exitCode;
        this.words = words;
    }

    static Conclusion of(List<Statement> statements) {
        if (has(statements, Statement.Kind.OBJECTS)) {
            return NOT_AS_ISSUED;
        }
        return has(statements, Statement.Kind.LEAVES_SIGNER_OPEN) ? SIGNER_OPEN : GENUINE;
    }

    private static boolean has(List<Statement> statements, Statement.Kind kind) {
        return statements.stream().anyMatch(statement -> statement.kind() == kind);
    }

    /** What a command ends with. */
    public int exitCode() {
        return exitCode;
    }

    /** In a sentence. */
    public String words() {
        return words;
    }
}
