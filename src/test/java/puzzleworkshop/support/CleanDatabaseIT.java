package puzzleworkshop.support;

import static org.assertj.core.api.Assertions.assertThat;

import javax.sql.DataSource;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class CleanDatabaseIT {

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource dataSource;

    @Test
    void the_whole_program_starts_on_a_real_PostgreSQL_and_its_database_can_be_cleaned() {
        CleanDatabase.now(dataSource);
        assertThat(jdbc.sql("show server_version_num").query(Integer.class).single())
                .isGreaterThanOrEqualTo(160000);
    }
}
