package puzzleworkshop.support;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Supplier;

/** What a test prepares is done as the program does its own work: with nobody signed in, whoever sits before the screen. */
public final class Nobody {

    private Nobody() {}

    /** On a thread of its own, where neither a session nor somebody signed in is known. */
    public static <T> T does(Supplier<T> work) {
        try (ExecutorService one = Executors.newSingleThreadExecutor()) {
            return one.submit(work::get).get();
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException reason) {
                throw reason;
            }
            throw new IllegalStateException(failed.getCause());
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(stopped);
        }
    }
}
