package puzzleworkshop.database;

import java.nio.file.Path;
import org.flywaydb.core.Flyway;
import org.springframework.stereotype.Service;
import puzzleworkshop.measure.Refused;

/** Fills a workshop that has not been opened yet from a backup, while the program runs. */
@Service
public class Restoring {

    private final Flyway flyway;

    Restoring(Flyway flyway) {
        this.flyway = flyway;
    }

    /** @throws Refused with the reason; the workshop is then as empty as before */
    public synchronized void from(Path file) {
        new Restore(flyway).from(file);
    }
}
