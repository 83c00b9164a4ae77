package puzzleworkshop.database;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.HexFormat;

/** The folder in which one copy of the program keeps its database. Only its owner may read it. */
record DataFolder(Path home) {

    DataFolder {
        home = home.toAbsolutePath().normalize();
    }

    /** {@code puzzleworkshop.data}, or a folder in the user's home where that is not set. */
    static DataFolder of(String setting) {
        return new DataFolder(
                setting == null || setting.isBlank()
                        ? Path.of(System.getProperty("user.home"), ".puzzle-workshop")
                        : Path.of(setting));
    }

    Path cluster() {
        return home.resolve("database");
    }

    /** PostgreSQL's own programs, unpacked. A name of its own: a process running from here is one that we started. */
    Path binaries() {
        return home.resolve("pg-binaries");
    }

    Path secretFile() {
        return home.resolve("database.secret");
    }

    void make() {
        try {
            Files.createDirectories(home);
            if (isPosix()) {
                Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwx------"));
            }
            Files.createDirectories(binaries());
        } catch (IOException e) {
            throw new CannotStart(
                    "The data folder " + home + " cannot be made or written.",
                    "Give the user who runs the program write access to it, or choose another folder with"
                            + " --puzzleworkshop.data=FOLDER.",
                    e);
        }
    }

    /**
     * Keeps a second copy of the program off the folder for as long as this one lives; the operating system lets go of
     * the lock when the process ends, however it ends.
     */
    FileChannel lock() {
        try {
            FileChannel channel =
                    FileChannel.open(home.resolve("app.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            if (locks(channel)) {
                return channel;
            }
            channel.close();
        } catch (IOException e) {
            throw new CannotStart(
                    "The lock file in " + home + " cannot be opened.",
                    "See that the folder can be written and that its disk is not full.",
                    e);
        }
        throw new CannotStart(
                "Another copy of Puzzle Workshop is running on the data folder " + home + ".",
                "Use that one (its address was printed when it started) or stop it first; or give this copy a folder of"
                        + " its own with --puzzleworkshop.data=FOLDER.",
                null);
    }

    private static boolean locks(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock();
            return lock != null;
        } catch (OverlappingFileLockException heldByThisProcess) {
            return false;
        }
    }

    /** The database's password, made up at the first start. */
    String secret() {
        try {
            if (!Files.exists(secretFile())) {
                writeSecret();
            }
            return Files.readString(secretFile()).strip();
        } catch (IOException e) {
            throw new CannotStart(
                    "The file " + secretFile() + " with the database's password cannot be read or written.",
                    "Run the program as the user who owns the data folder.",
                    e);
        }
    }

    private void writeSecret() throws IOException {
        byte[] random = new byte[24];
        new SecureRandom().nextBytes(random);
        if (isPosix()) {
            Files.createFile(
                    secretFile(), PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        }
        Files.writeString(secretFile(), HexFormat.of().formatHex(random));
    }

    private boolean isPosix() {
        return home.getFileSystem().supportedFileAttributeViews().contains("posix");
    }
}
