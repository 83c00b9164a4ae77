package puzzleworkshop.benchmarks;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** Runs the benchmark named by the first argument on the folder in the second (optional); see DEVELOPERS.md. */
public final class Benchmarks {

    private Benchmarks() {}

    public static void main(String[] args) throws Exception {
        Locale.setDefault(Locale.ROOT);
        String name = args.length > 0 ? args[0] : "none";
        Optional<Path> folder =
                args.length > 1 && !args[1].isBlank() ? Optional.of(Path.of(args[1])) : Optional.empty();
        if (folder.isPresent() && !Files.isDirectory(folder.get())) {
            System.err.println("There is no folder " + folder.get() + "; give one that holds instance files.");
            System.exit(2);
        }
        Benchmark benchmark = byName(name);
        String result = benchmark.run(folder, System.out);
        System.out.println("RESULT " + name + " " + result);
        System.exit(0);
    }

    private static Benchmark byName(String name) throws ReflectiveOperationException {
        String type = Benchmarks.class.getPackageName() + "." + Character.toUpperCase(name.charAt(0))
                + name.substring(1) + "Benchmark";
        try {
            return (Benchmark) Class.forName(type).getDeclaredConstructor().newInstance();
        } catch (ClassNotFoundException unknown) {
            System.err.println("There is no benchmark '" + name + "'. Their names are in DEVELOPERS.md: -Dbench=NAME.");
            System.exit(2);
            throw unknown;
        }
    }
}
