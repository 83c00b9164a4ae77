package puzzleworkshop.database;

import java.nio.file.Path;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.configuration.FluentConfiguration;
import puzzleworkshop.measure.Refused;

/** Reads backups into an empty workshop as the program does. */
public final class OutsideBackups {

    private final Flyway flyway;

    public OutsideBackups(String url, String user, String password) {
        FluentConfiguration configuration = Flyway.configure()
                .dataSource(url, user, password)
                .locations("classpath:db/migration")
                .cleanDisabled(false);
        flyway = configuration.load();
    }

    /** As empty as a new workshop. */
    public void makeEmpty() {
        flyway.clean();
        flyway.migrate();
    }

    /** @throws Refused when it is not taken */
    public void read(Path file) {
        new Restore(flyway).from(file);
    }
}
