package dev.reelproof;

import dev.reelproof.app.seal.VerifyLog;
import java.io.PrintStream;
import java.util.List;

/** Checks a whole database against its log, and the log against the heads outside; the settings are those of the service. */
final class VerifyLogCommand implements Commands.Command {

    @Override
    public String usage() {
        return "verify-log   checks the whole database against its log; exit code 0: whole, 1: names the first row that"
                + " differs, 2: cannot be checked";
    }

    @Override
    public int run(List<String> arguments, PrintStream out, PrintStream err) {
        if (!arguments.isEmpty()) {
            err.println(usage());
            return Commands.WRONG_USE;
        }
        return VerifyLog.run(out, err);
    }
}
