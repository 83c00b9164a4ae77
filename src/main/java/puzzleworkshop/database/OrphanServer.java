package puzzleworkshop.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * A PostgreSQL server that outlived its program (after a power cut of the program only, kill -9, a crash). It is asked
 * to end before the next one starts; PostgreSQL itself keeps what was committed. Only a process whose binary lies in
 * our own folder is ever touched: a process number in a left-over file may by now belong to anyone.
 */
final class OrphanServer {

    private static final long PATIENCE_SECONDS = 60;

    private OrphanServer() {}

    static void end(DataFolder folder) {
        // SIGTERM waits for clients; the program that was its only client is gone.
        running(folder).ifPresent(server -> {
            server.destroy();
            awaitEnd(server, folder);
        });
    }

    /** The server at work on the folder, if it is one of ours. */
    static Optional<ProcessHandle> running(DataFolder folder) {
        return pidIn(folder.cluster().resolve("postmaster.pid"))
                .flatMap(ProcessHandle::of)
                .filter(ProcessHandle::isAlive)
                .filter(process -> isOurs(process, folder));
    }

    /** The process whose number the server has just written. */
    static Optional<ProcessHandle> inFile(DataFolder folder) {
        return pidIn(folder.cluster().resolve("postmaster.pid"))
                .flatMap(ProcessHandle::of)
                .filter(ProcessHandle::isAlive);
    }

    /** Not ended, and no remnant that nobody has fetched the end of (Linux: state Z in {@code /proc/PID/stat}, man 5 proc). */
    static boolean isAtWork(ProcessHandle process) {
        if (!process.isAlive()) {
            return false;
        }
        try {
            String stat = Files.readString(Path.of("/proc", Long.toString(process.pid()), "stat"));
            return stat.charAt(stat.lastIndexOf(')') + 2) != 'Z';
        } catch (IOException | IndexOutOfBoundsException untold) {
            return process.isAlive();
        }
    }

    static void awaitEnd(ProcessHandle server, DataFolder folder) {
        try {
            server.onExit().get(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            throw new CannotStart(
                    "The database server (process " + server.pid() + ") still holds " + folder.cluster()
                            + " and does not end.",
                    "End that process and start again.",
                    e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } catch (ExecutionException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Optional<Long> pidIn(Path pidFile) {
        try {
            List<String> lines = Files.readAllLines(pidFile);
            return lines.isEmpty()
                    ? Optional.empty()
                    : Optional.of(Long.valueOf(lines.getFirst().strip()));
        } catch (IOException | NumberFormatException noServerOrTornFile) {
            return Optional.empty();
        }
    }

    private static boolean isOurs(ProcessHandle process, DataFolder folder) {
        return process.info()
                .command()
                .map(Path::of)
                .map(OrphanServer::real)
                .filter(command -> command.startsWith(real(folder.binaries())))
                .isPresent();
    }

    private static Path real(Path path) {
        try {
            return path.toRealPath();
        } catch (IOException e) {
            return path.toAbsolutePath().normalize();
        }
    }
}
