package dev.reelproof.demo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.app.access.DemoAccount;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Loads {@code demo-data/} into a service over HTTP: products, reels, lots, test results; then prints what came of it.
 *
 * <p>Loading again changes nothing: every route that is used takes the same content twice. What fails is reported as a
 * sentence, and the rest is loaded.
 */
final class DemoLoading implements Runnable {
    private static final String FOLDER = "/demo-data/";
    private static final String JSON = "application/json";
    // A constant boundary: the same demo then gives the same bytes, which the service knows again.
    private static final String BOUNDARY = "reelproof-demo-part";
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    private static final int READY_ATTEMPTS = 600;
    private static final Duration BETWEEN_ATTEMPTS = Duration.ofMillis(200);
    private static final int MOST_SHOWN = 200;
    private static final int OK = 200;
    private static final int FIRST_NOT_FINE = 300;
    private static final String ROW = "%-9s %-10s %9s  %-10s  %s%n";

    private static final String SIGN_IN = "%-16s %-22s %s%n";

    private final URI address;
    private final String token;
    private final Path tokenFile;
    private final PrintStream out;
    private final ObjectMapper json = new ObjectMapper();
    private final HttpClient client = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(PATIENCE)
            .build();
    private int failures;

    /**
     * A loading.
     *
     * @param address of the service, such as {@code http://localhost:8080}
     * @param token authenticates the loading
     * @param tokenFile where scripts find the token; its place is printed, the token is not
     * @param out where the outcome is printed
     */
    DemoLoading(URI address, String token, Path tokenFile, PrintStream out) {
        this.address = address;
        this.token = token;
        this.tokenFile = tokenFile;
        this.out = out;
    }

    /** A line of the table. */
    private record Row(String reel, String product, String length, String verdict, String reason) {}

    @Override
    public void run() {
        try {
            waitUntilReady();
            load();
        } catch (IOException e) {
            out.println("The demo plant was not loaded: " + e.getMessage() + ". The service itself goes on.");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void waitUntilReady() throws IOException, InterruptedException {
        for (int attempt = 0; attempt < READY_ATTEMPTS; attempt++) {
            if (send("GET", "/q/health/ready", JSON, BodyPublishers.noBody()).statusCode() == OK) {
                return;
            }
            Thread.sleep(BETWEEN_ATTEMPTS.toMillis());
        }
        throw new IOException(
                "the service did not become ready; GET /q/health/ready on " + address + " says what it waits for");
    }

    private void load() throws IOException, InterruptedException {
        for (JsonNode product : json.readTree(file("products.json"))) {
            accepted("PUT", "/api/v1/products/" + product.get("product").asText(), product.get("register"));
        }
        JsonNode reels = json.readTree(file("reels.json"));
        for (JsonNode reel : reels) {
            accepted("PUT", "/api/v1/reels/" + reel.get("reel").asText(), reel.get("register"));
        }
        for (String lot : new String(file("lots.ndjson"), StandardCharsets.UTF_8).split("\n")) {
            accepted("POST", "/api/v1/lots", json.readTree(lot));
        }
        List<Row> rows = new ArrayList<>();
        for (JsonNode reel : reels) {
            rows.add(test(reel));
        }
        print(rows);
    }

    /** Sends a document; reports it when the service does not take it. */
    private void accepted(String method, String path, JsonNode body) throws IOException, InterruptedException {
        HttpResponse<String> response =
                send(method, path, JSON, BodyPublishers.ofByteArray(json.writeValueAsBytes(body)));
        if (!isFine(response)) {
            String subject = body.has("id") ? " (" + body.get("id").asText() + ")" : "";
            report(method + " " + path + subject, response);
        }
    }

    private Row test(JsonNode reel) throws IOException, InterruptedException {
        String id = reel.get("reel").asText();
        JsonNode length = reel.get("register").get("length");
        String product = reel.get("register").get("product").asText();
        String words = length.get("value").asText() + " " + length.get("unit").asText();
        String path = "/api/v1/reels/" + id + "/tests";
        HttpResponse<String> response = reel.has("csv")
                ? send("POST", path, "multipart/form-data; boundary=" + BOUNDARY, multipart(reel))
                : send(
                        "POST",
                        path,
                        JSON,
                        BodyPublishers.ofByteArray(file(reel.get("result").asText())));
        if (!isFine(response)) {
            report("POST " + path, response);
            return new Row(id, product, words, "not taken", "see above");
        }
        JsonNode record = json.readTree(response.body());
        return new Row(id, product, words, record.path("verdict").asText(), firstReason(record.path("findings")));
    }

    private BodyPublisher multipart(JsonNode reel) throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        part(body, "result", reel.get("result").asText(), JSON);
        for (JsonNode csv : reel.get("csv")) {
            part(body, fileName(csv.asText()), csv.asText(), "text/csv");
        }
        body.write(("--" + BOUNDARY + "--\r\n").getBytes(StandardCharsets.UTF_8));
        return BodyPublishers.ofByteArray(body.toByteArray());
    }

    private static void part(ByteArrayOutputStream body, String name, String path, String type) throws IOException {
        body.write(("--" + BOUNDARY + "\r\nContent-Disposition: form-data; name=\"" + name + "\"; filename=\""
                        + fileName(path) + "\"\r\nContent-Type: " + type + "\r\n\r\n")
                .getBytes(StandardCharsets.UTF_8));
        body.write(file(path));
        body.write("\r\n".getBytes(StandardCharsets.UTF_8));
    }

    private static String fileName(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }

    /** The first failing finding in words, else the first not tested with its first reason, else nothing. */
    static String firstReason(JsonNode findings) {
        for (JsonNode finding : findings) {
            if (finding.path("outcome").asText().endsWith("fail")) {
                return place(finding) + ": " + figure(finding, "value") + " against " + figure(finding, "limit")
                        + " " + finding.path("unit").asText()
                        + (finding.path("frequency").hasNonNull("value")
                                ? " at "
                                        + finding.path("frequency").get("value").asText() + " "
                                        + finding.path("frequency").path("unit").asText()
                                : "");
            }
        }
        for (JsonNode finding : findings) {
            if (finding.path("outcome").asText().equals("not-tested")) {
                return finding.path("property").asText() + " not tested: "
                        + finding.path("reason").asText("no reason given").replaceFirst(";.*", "");
            }
        }
        return "";
    }

    private static String place(JsonNode finding) {
        return finding.path("property").asText()
                + (finding.hasNonNull("pair") ? ", pair " + finding.get("pair").asText() : "")
                + (finding.hasNonNull("partner")
                        ? " and " + finding.get("partner").asText()
                        : "")
                + (finding.hasNonNull("end") ? ", " + finding.get("end").asText() + " end" : "");
    }

    private static String figure(JsonNode finding, String name) {
        JsonNode value = finding.path(name);
        return value.isNumber() ? String.format(Locale.ROOT, "%.4g", value.asDouble()) : "";
    }

    private void print(List<Row> rows) {
        out.println();
        out.println("Reelproof listens at " + address + "/");
        out.println();
        out.printf(Locale.ROOT, SIGN_IN, "sign in as", "password", "role");
        for (DemoAccount person : DemoAccount.ALL) {
            out.printf(
                    Locale.ROOT,
                    SIGN_IN,
                    person.name(),
                    person.password(),
                    person.role().word());
        }
        out.println("Scripts send the token in " + tokenFile + ": 'Authorization: Bearer …'.");
        out.println("These are good for nothing once the service runs without REELPROOF_DEMO=true.");
        out.println();
        out.println("Invented data: no plant, product, customer, person or reel of the demo is real.");
        out.println();
        out.printf(Locale.ROOT, ROW, "reel", "product", "length", "verdict", "first reason");
        for (Row row : rows) {
            out.printf(Locale.ROOT, ROW, row.reel(), row.product(), row.length(), row.verdict(), row.reason());
        }
        out.println();
        if (failures > 0) {
            out.println(failures + " of the demo's documents were not taken; the reasons stand above.");
        }
        out.flush();
    }

    private void report(String what, HttpResponse<String> response) {
        failures++;
        String body = response.body();
        String detail = body.substring(0, Math.min(body.length(), MOST_SHOWN)).replaceAll("\\s+", " ");
        try {
            JsonNode problem = json.readTree(body);
            if (problem != null && problem.hasNonNull("detail")) {
                detail = problem.get("detail").asText();
            }
        } catch (IOException e) {
            // Not a problem document: the beginning of the body says the most.
        }
        out.println("The demo's " + what + " was answered with " + response.statusCode() + ": " + detail);
    }

    private HttpResponse<String> send(String method, String path, String type, BodyPublisher body)
            throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(address.resolve(path))
                .timeout(PATIENCE)
                .header("Content-Type", type)
                .header("Authorization", "Bearer " + token)
                .header("Accept", "application/json, application/problem+json")
                .method(method, body)
                .build();
        return client.send(request, BodyHandlers.ofString(StandardCharsets.UTF_8));
    }

    private static boolean isFine(HttpResponse<String> response) {
        return response.statusCode() >= OK && response.statusCode() < FIRST_NOT_FINE;
    }

    private static byte[] file(String name) throws IOException {
        try (InputStream in = DemoLoading.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new IOException("demo-data/" + name + " is not on the class path; build the program again");
            }
            return in.readAllBytes();
        }
    }
}
