package puzzleworkshop.database;

import java.util.Optional;
import java.util.UUID;
import org.springframework.dao.DataAccessException;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** For whoever watches a server: whether the program answers and reaches its database. Says nothing else, to anyone. */
@RestController
class HealthPage {

    /** Changes with each start, so that a page can tell that the program it belongs to is gone. */
    private static final String START = "X-Started";

    private final String started = UUID.randomUUID().toString();
    private final JdbcClient jdbc;
    private final Optional<EmbeddedServer> server;

    HealthPage(JdbcClient jdbc, Optional<EmbeddedServer> server) {
        this.jdbc = jdbc;
        this.server = server;
    }

    @GetMapping(path = "/healthz", produces = MediaType.TEXT_PLAIN_VALUE)
    ResponseEntity<String> health() {
        EmbeddedServer own = server.orElse(null);
        if (own != null && !own.isUp()) {
            return away();
        }
        try {
            jdbc.sql("select 1").query(Integer.class).single();
            return ResponseEntity.ok()
                    .header(START, started)
                    .cacheControl(CacheControl.noStore())
                    .body("open\n");
        } catch (DataAccessException unreachable) {
            return away();
        }
    }

    private ResponseEntity<String> away() {
        return ResponseEntity.status(HttpStatus.SERVICE_UNAVAILABLE)
                .header(START, started)
                .cacheControl(CacheControl.noStore())
                .body("the database does not answer\n");
    }
}
