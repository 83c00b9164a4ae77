package puzzleworkshop.access.roles;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.TreeMap;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;

/**
 * Of each public command of each service, what a maker gets. It stands in {@code roles/ROOM.properties}, one line for each
 * command ({@code Bench.tick=all}); a test fails while a command is missing, and a maker is refused it.
 */
final class RoleTable {

    private final Map<String, May> lines;

    private RoleTable(Map<String, May> lines) {
        this.lines = lines;
    }

    static RoleTable read() {
        Map<String, May> lines = new TreeMap<>();
        try {
            for (Resource room :
                    new PathMatchingResourcePatternResolver().getResources("classpath*:roles/*.properties")) {
                Properties read = new Properties();
                try (InputStream in = room.getInputStream()) {
                    read.load(in);
                }
                read.forEach((command, may) -> {
                    May before = lines.put((String) command, may((String) may));
                    if (before != null) {
                        throw new IllegalStateException(command + " stands twice in the table of roles");
                    }
                });
            }
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
        return new RoleTable(lines);
    }

    private static May may(String written) {
        return May.valueOf(written.strip().toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    /** By simple names of class and method, which are unique in the program; overloads share a line. */
    Optional<May> of(Class<?> service, String method) {
        return Optional.ofNullable(lines.get(service.getSimpleName() + "." + method));
    }

    Map<String, May> lines() {
        return lines;
    }
}
