package puzzleworkshop.database;

import org.springframework.dao.DataAccessException;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** For whoever watches a server: whether the program answers and reaches its database. Says nothing else, to anyone. */
@RestController
class HealthPage {

    private final JdbcClient jdbc;

    HealthPage(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @GetMapping(path = "/healthz", produces = MediaType.TEXT_PLAIN_VALUE)
    ResponseEntity<String> health() {
        try {
            jdbc.sql("select 1").query(Integer.class).single();
            return ResponseEntity.ok("open\n");
        } catch (DataAccessException unreachable) {
            return ResponseEntity.status(HttpStatus.SERVICE_UNAVAILABLE).body("the database does not answer\n");
        }
    }
}
