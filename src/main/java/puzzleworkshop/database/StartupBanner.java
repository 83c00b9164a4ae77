package puzzleworkshop.database;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import javax.sql.DataSource;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Says at the end of the start where the program is to be found and where it keeps its data. */
@Component
class StartupBanner {

    private final Environment environment;
    private final DataSource dataSource;
    private final Optional<EmbeddedServer> embedded;

    StartupBanner(Environment environment, DataSource dataSource, Optional<EmbeddedServer> embedded) {
        this.environment = environment;
        this.dataSource = dataSource;
        this.embedded = embedded;
    }

    @EventListener
    void started(ApplicationReadyEvent ready) throws SQLException {
        String port = environment.getProperty("local.server.port");
        if (port == null) {
            return;
        }
        String kept = embedded.map(server -> server.home().toString()).orElseGet(this::serverAddress);
        System.out.printf(
                "%n  Puzzle Workshop is open at  http://localhost:%s%s%n  Its data lies in            %s%n"
                        + "  Stop it with Ctrl+C.%n%n",
                port, environment.getProperty("server.servlet.context-path", ""), kept);
    }

    private String serverAddress() {
        try (Connection connection = dataSource.getConnection()) {
            return connection.getMetaData().getURL().replaceFirst("\\?.*", "");
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }
}
