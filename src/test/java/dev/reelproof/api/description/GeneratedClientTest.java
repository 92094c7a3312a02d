package dev.reelproof.api.description;

import static io.restassured.RestAssured.given;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.reelproof.api.access.SignedIn;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.io.StringWriter;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/**
 * A stranger's generator reads the description of the API and makes a Java client of it, which compiles and does the main job. The
 * generator is a program of its own, with libraries of its own: Maven puts it beside the tests.
 */
@QuarkusTest
@ExtendWith(SignedIn.class)
class GeneratedClientTest {
    private static final Path GENERATOR = Path.of(System.getProperty("openapi.generator"));
    private static final long LONGEST_MINUTES = 3;

    @TestHTTPResource("/")
    URL service;

    @TempDir
    Path folder;

    private Path description;

    @BeforeEach
    void describe() throws IOException {
        description = folder.resolve("openapi.json");
        Files.writeString(
                description,
                given().queryParam("format", "json").get("/q/openapi").asString());
    }

    @Test
    void findsNothingToRemark() throws Exception {
        String said = generator("validate", "--recommend", "-i", description.toString());
        assertTrue(said.contains("No validation issues detected"), said);
        assertTrue(!said.contains("ERROR") && !said.contains("WARN"), said);
    }

    @Test
    void doesTheMainJobThroughAGeneratedClient() throws Exception {
        generator(
                "generate",
                "-i",
                description.toString(),
                "-g",
                "java",
                "--library",
                "native",
                "-o",
                folder.resolve("client").toString(),
                "--additional-properties",
                "useJakartaEe=true,openApiNullable=false,containerDefaultToNull=true,invokerPackage=reelproof.client,"
                        + "apiPackage=reelproof.client.api,modelPackage=reelproof.client.model",
                "--global-property",
                "apis,models,supportingFiles,apiTests=false,modelTests=false,apiDocs=false,modelDocs=false");
        Path mainJob = resource("/client/MainJob.java", "MainJob.java");
        Path result = resource("/demo-data/results/R-26001.json", "result.json");

        Path classes = compile(folder.resolve("client/src/main/java"), mainJob);

        try (URLClassLoader loader = new URLClassLoader(
                new URL[] {classes.toUri().toURL()}, getClass().getClassLoader())) {
            Object said = loader.loadClass("MainJob")
                    .getMethod("run", String.class, String.class, Path.class)
                    .invoke(null, service.toString().replaceAll("/$", ""), SignedIn.authorization(), result);
            assertEquals(
                    """
                    untested: 409
                    verdict: accepted
                    findings: many
                    return loss: pass
                    certificate: %PDF-
                    genuine: true""",
                    said);
        }
    }

    private String generator(String... arguments) throws IOException, InterruptedException {
        assertTrue(Files.exists(GENERATOR), GENERATOR + " is not there: Maven copies it before the tests");
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar"));
        command.add(GENERATOR.toString());
        command.addAll(List.of(arguments));
        Path output = folder.resolve("output");
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(output.toFile())
                .start();
        boolean ended = process.waitFor(LONGEST_MINUTES, TimeUnit.MINUTES);
        process.destroyForcibly();
        String said = Files.readString(output);
        assertTrue(ended && process.exitValue() == 0, said);
        return said;
    }

    private Path compile(Path sources, Path mainJob) throws IOException {
        Path classes = Files.createDirectory(folder.resolve("classes"));
        List<Path> files = new ArrayList<>(List.of(mainJob));
        try (Stream<Path> found = Files.walk(sources)) {
            found.filter(file -> file.toString().endsWith(".java")).forEach(files::add);
        }
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        StringWriter said = new StringWriter();
        try (StandardJavaFileManager manager = compiler.getStandardFileManager(null, null, StandardCharsets.UTF_8)) {
            boolean compiled = compiler.getTask(
                            said,
                            manager,
                            null,
                            List.of("-nowarn", "-proc:none", "-d", classes.toString(), "-classpath", classPath()),
                            null,
                            manager.getJavaFileObjectsFromPaths(files))
                    .call();
            assertTrue(compiled, said.toString());
        }
        return classes;
    }

    private static String classPath() {
        return System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    }

    private Path resource(String name, String file) throws IOException {
        try (var in = getClass().getResourceAsStream(name)) {
            return Files.write(folder.resolve(file), in.readAllBytes());
        }
    }
}
