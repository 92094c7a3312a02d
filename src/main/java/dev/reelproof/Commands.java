package dev.reelproof;

import java.io.PrintStream;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What the program does instead of serving when its first argument names it. A command joins by a line in the table. */
final class Commands {
    /** How a command ends that could not do what it was asked. */
    static final int WRONG_USE = 2;

    private static final Map<String, Command> TABLE =
            new TreeMap<>(Map.of("verify", new VerifyCommand(), "verify-log", new VerifyLogCommand()));

    private Commands() {}

    /** A command. */
    interface Command {

        /** How it is called, and what for: one line. */
        String usage();

        /**
         * Does it, and gives the exit code.
         *
         * @param arguments what follows the command's name
         */
        int run(List<String> arguments, PrintStream out, PrintStream err);
    }

    /** Whether these arguments mean a command; the service takes none but options. */
    static boolean isMeant(String... arguments) {
        return arguments.length > 0 && !(arguments[0].isBlank() || arguments[0].startsWith("-"));
    }

    /** Runs the command that the first argument names, and gives the exit code. */
    static int run(List<String> arguments, PrintStream out, PrintStream err) {
        Command command = TABLE.get(arguments.get(0));
        if (command == null) {
            err.println("There is no command '" + arguments.get(0) + "'. Without one, the service starts; with one:");
            TABLE.values().forEach(each -> err.println("  " + each.usage()));
            return WRONG_USE;
        }
        return command.run(arguments.subList(1, arguments.size()), out, err);
    }
}
