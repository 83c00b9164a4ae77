package puzzleworkshop.database;

import java.nio.file.Files;
import java.nio.file.Path;
import org.flywaydb.core.Flyway;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Refused;

/** With {@code --puzzleworkshop.restore=FILE} the program fills its empty database from a backup before it opens. */
@Component
class RestoreAtStart implements FlywayMigrationStrategy {

    private final String file;

    RestoreAtStart(@Value("${puzzleworkshop.restore:}") String file) {
        this.file = file;
    }

    @Override
    public void migrate(Flyway flyway) {
        if (file.isBlank()) {
            flyway.migrate();
            return;
        }
        if (!Files.isReadable(Path.of(file))) {
            throw new CannotStart(
                    "The backup " + file + " cannot be read.", "Check the file's name and its rights.", null);
        }
        try {
            new Restore(flyway).from(Path.of(file));
        } catch (Refused refused) {
            throw new CannotStart(
                    new Texts()
                            .getTranslation(
                                    refused.sentence().key(),
                                    Texts.LOCALE,
                                    refused.sentence().arguments().toArray()),
                    "Start without --puzzleworkshop.restore, or with an empty data folder and a sound backup.",
                    refused);
        }
    }
}
