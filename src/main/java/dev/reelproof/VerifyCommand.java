package dev.reelproof;

import dev.reelproof.pdf.check.PaperCheck;
import dev.reelproof.pdf.check.Statement;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;

/** Checks a certificate's PDF by what it carries: neither network nor database is asked. */
final class VerifyCommand implements Commands.Command {
    private static final String TRUST = "--trust";

    @Override
    public String usage() {
        return "verify FILE.pdf [--trust CERTIFICATE.pem]   checks a certificate's PDF alone; exit code 0: unchanged and signed"
                + " by the plant, 1: not as it was issued, 2: cannot be checked, 3: unchanged, the signer is not known";
    }

    @Override
    public int run(List<String> arguments, PrintStream out, PrintStream err) {
        // What the libraries say of a broken file is for programmers.
        Logger.getLogger("").setLevel(Level.OFF);
        List<String> files = new ArrayList<>(arguments);
        List<X509Certificate> trusted = new ArrayList<>();
        try {
            int option = files.indexOf(TRUST);
            while (option >= 0) {
                if (option + 1 >= files.size()) {
                    err.println(TRUST + " names the file of the plant's certificate.");
                    return Commands.WRONG_USE;
                }
                trusted.addAll(certificates(Path.of(files.get(option + 1))));
                files.remove(option + 1);
                files.remove(option);
                option = files.indexOf(TRUST);
            }
            if (files.size() != 1 || files.get(0).startsWith("-")) {
                err.println(usage());
                return Commands.WRONG_USE;
            }
            return check(Path.of(files.get(0)), trusted, out, err);
        } catch (CertificateException e) {
            err.println("The file given with " + TRUST + " has no X.509 certificate (PEM or DER): " + e.getMessage());
            return Commands.WRONG_USE;
        } catch (IOException e) {
            err.println("The file cannot be read: " + e.getMessage());
            return Commands.WRONG_USE;
        }
    }

    private static List<X509Certificate> certificates(Path file) throws IOException, CertificateException {
        requireFile(file);
        try (InputStream in = Files.newInputStream(file)) {
            List<X509Certificate> found = CertificateFactory.getInstance("X.509").generateCertificates(in).stream()
                    .map(X509Certificate.class::cast)
                    .toList();
            if (found.isEmpty()) {
                throw new CertificateException("it is empty");
            }
            return found;
        }
    }

    private static void requireFile(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IOException(file + " is not there");
        }
    }

    private static int check(Path file, List<X509Certificate> trusted, PrintStream out, PrintStream err)
            throws IOException {
        requireFile(file);
        PaperCheck check;
        try {
            check = PaperCheck.of(Files.readAllBytes(file), trusted);
        } catch (IOException e) {
            err.println(file + " is no PDF that can be read: " + e.getMessage());
            return Commands.WRONG_USE;
        }
        for (Statement statement : check.statements()) {
            out.println((statement.kind() == Statement.Kind.OBJECTS ? "! " : "  ") + statement.words());
        }
        out.println(check.conclusion().words());
        return check.conclusion().exitCode();
    }
}
