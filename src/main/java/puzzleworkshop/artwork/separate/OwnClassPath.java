package puzzleworkshop.artwork.separate;

import java.io.File;
import java.net.URI;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** How another Java process finds our classes: as this one does, from folders and jars or from the packed program. */
final class OwnClassPath {

    private OwnClassPath() {}

    /** The arguments for {@code java} that start a class of ours, from whatever folder. */
    static List<String> start(Class<?> main) {
        List<String> entries = new ArrayList<>();
        String from = main.getProtectionDomain().getCodeSource().getLocation().toString();
        boolean packed = from.startsWith("jar:nested:");
        if (!packed && main.getClassLoader() instanceof URLClassLoader loader) {
            // some programs that run tests bring their own loader
            for (URL url : loader.getURLs()) {
                entries.add(Path.of(URI.create(url.toString())).toString());
            }
        }
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
            entries.add(Path.of(entry).toAbsolutePath().toString());
        }
        String path = String.join(File.pathSeparator, entries);
        // Spring Boot's own launcher reads the jars inside the jar; this one lets itself be told what to start.
        return packed
                ? List.of(
                        "-Dloader.main=" + main.getName(),
                        "-cp",
                        path,
                        "org.springframework.boot.loader.launch.PropertiesLauncher")
                : List.of("-cp", path, main.getName());
    }
}
