package dev.reelproof.store.seal;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.reelproof.seal.Hash;
import dev.reelproof.seal.SignedHead;
import dev.reelproof.seal.TreeHead;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The heads outside the database: a file of lines of JSON, added to and never rewritten.
 *
 * <p>A line counts when its line feed is there: what a crash cut off was never promised to anybody, and the next head takes its place.
 *
 * <p>It is what a database that was set back is recognised by. So it belongs where the database's owner cannot reach, and copies of
 * it elsewhere.
 */
public final class HeadsFile {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final Path file;
    private @Nullable Map<String, SignedHead> newest;

    public HeadsFile(Path file) {
        this.file = file;
    }

    public Path path() {
        return file;
    }

    /** Adds a head; it is on the disk when this returns. */
    public synchronized void append(SignedHead head) {
        byte[] line = (json(head) + "\n").getBytes(StandardCharsets.UTF_8);
        try {
            Path folder = file.toAbsolutePath().getParent();
            if (folder != null) {
                Files.createDirectories(folder);
            }
            try (FileChannel channel = FileChannel.open(
                    file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
                channel.truncate(endOfLastLine(channel));
                channel.position(channel.size());
                ByteBuffer left = ByteBuffer.wrap(line);
                while (left.hasRemaining()) {
                    channel.write(left);
                }
                channel.force(true);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("The log's head could not be written to " + file + ": " + e.getMessage(), e);
        }
        newest().put(head.head().plant(), head);
    }

    private static long endOfLastLine(FileChannel channel) throws IOException {
        ByteBuffer last = ByteBuffer.allocate(1);
        for (long end = channel.size(); end > 0; end--) {
            channel.read(last.clear(), end - 1);
            if (last.get(0) == '\n') {
                return end;
            }
        }
        return 0;
    }

    /** The head of a plant that was written last; empty when there is none. */
    public synchronized Optional<SignedHead> newest(String plant) {
        return Optional.ofNullable(newest().get(plant));
    }

    /** Read once: this program alone writes the file while it runs. */
    private Map<String, SignedHead> newest() {
        Map<String, SignedHead> read = newest;
        if (read == null) {
            read = new HashMap<>();
            for (SignedHead head : all()) {
                read.put(head.head().plant(), head);
            }
            newest = read;
        }
        return read;
    }

    /**
     * All heads in the order in which they were written; none when there is no file.
     *
     * @throws IllegalStateException when a line cannot be read; it is named
     */
    public List<SignedHead> all() {
        if (!Files.exists(file)) {
            return List.of();
        }
        List<SignedHead> heads = new ArrayList<>();
        try {
            String text = Files.readString(file);
            int number = 0;
            for (String line :
                    text.substring(0, text.lastIndexOf('\n') + 1).lines().toList()) {
                number++;
                heads.add(head(line, number));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("The log's heads in " + file + " could not be read: " + e.getMessage(), e);
        }
        return List.copyOf(heads);
    }

    private static String json(SignedHead head) {
        return JSON.createObjectNode()
                .put("plant", head.head().plant())
                .put("size", head.head().size())
                .put("root", head.head().root().hex())
                .put("at", head.head().at().toString())
                .put("key", head.keyId())
                .put("signature", head.signature())
                .toString();
    }

    private SignedHead head(String line, int number) {
        try {
            JsonNode node = JSON.readTree(line);
            return new SignedHead(
                    new TreeHead(
                            node.required("plant").textValue(),
                            node.required("size").longValue(),
                            Hash.ofHex(node.required("root").textValue()),
                            Instant.parse(node.required("at").textValue())),
                    node.required("key").textValue(),
                    node.required("signature").textValue());
        } catch (JsonProcessingException | IllegalArgumentException | DateTimeParseException e) {
            throw new IllegalStateException(file + ":" + number + ": this is no head of a log: " + e.getMessage(), e);
        }
    }
}
