package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Optional;

/** One measurement outside the tests. Its class is named after it: {@code fit} is {@code FitBenchmark}. */
public interface Benchmark {

    /**
     * Measures and prints a table for people.
     *
     * @param folder instances to use in place of built-in ones, in the format of the shared data; every file is read
     * @return the fields of the last line, {@code blanks=40 seconds=1.2}, without the word RESULT and the name
     */
    String run(Optional<Path> folder, PrintStream out) throws Exception;
}
