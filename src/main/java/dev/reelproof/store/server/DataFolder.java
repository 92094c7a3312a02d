package dev.reelproof.store.server;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A data folder that this program alone uses, from {@link #open} until {@link #close}.
 *
 * <p>The lock is held by a file that stays open. It is kept where no collection of garbage reaches it: a lock that nobody refers to
 * is closed with its file, and a second program would then take the folder of a running one. And a folder is looked up here before
 * its lock file is opened a second time, since closing any opening of a file gives up the program's locks on it.
 */
final class DataFolder implements AutoCloseable {
    private static final Map<Path, FileChannel> HELD = new HashMap<>();

    private final Path root;

    private DataFolder(Path root) {
        this.root = root;
    }

    /**
     * Takes a folder, and makes it when it is not there.
     *
     * @throws IllegalStateException when a running program has it
     * @throws IOException when it cannot be made or written to
     */
    static DataFolder open(Path folder) throws IOException {
        makePrivate(folder.toAbsolutePath().normalize());
        Path root = folder.toRealPath();
        synchronized (HELD) {
            if (HELD.containsKey(root)) {
                throw inUse(root);
            }
            FileChannel channel =
                    FileChannel.open(root.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            boolean taken = false;
            try {
                @Nullable FileLock lock = channel.tryLock();
                if (lock == null) {
                    throw inUse(root);
                }
                HELD.put(root, channel);
                taken = true;
            } finally {
                if (!taken) {
                    channel.close();
                }
            }
        }
        return new DataFolder(root);
    }

    /** Whether no running program has the folder, which must be there. */
    static boolean isFree(Path folder) throws IOException {
        try {
            open(folder).close();
            return true;
        } catch (IllegalStateException inUse) {
            return false;
        }
    }

    private static IllegalStateException inUse(Path root) {
        return new IllegalStateException("The data folder " + root
                + " is in use by another running copy of Reelproof. Stop that one, or set REELPROOF_DATA to another"
                + " folder.");
    }

    /** Makes a folder that the program's own account alone may enter. */
    static void makePrivate(Path folder) throws IOException {
        Files.createDirectories(folder);
        if (hasPosixRights(folder)) {
            Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx------"));
        }
    }

    /** Whether the file system knows rights of owner, group and others. */
    static boolean hasPosixRights(Path path) {
        return path.getFileSystem().supportedFileAttributeViews().contains("posix");
    }

    /** The folder, as an absolute path without links. */
    Path root() {
        return root;
    }

    /** Lets other programs have the folder. */
    @Override
    public void close() throws IOException {
        synchronized (HELD) {
            FileChannel channel = HELD.remove(root);
            if (channel != null) {
                channel.close();
            }
        }
    }
}
