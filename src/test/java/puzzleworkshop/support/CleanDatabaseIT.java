package puzzleworkshop.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.planning.WeekPlan;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class CleanDatabaseIT {

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource dataSource;

    @Autowired
    BeanFactory beans;

    @Autowired
    WeekPlan plan;

    @Test
    void the_program_runs_on_a_PostgreSQL_that_it_supports() {
        assertThat(jdbc.sql("show server_version_num").query(Integer.class).single())
                .isGreaterThanOrEqualTo(160000);
    }

    @Test
    void a_used_database_is_brought_back_to_what_the_migrations_left_row_by_row() {
        CleanDatabase.now(dataSource);
        Map<String, List<String>> fresh = everything();
        assertThat(fresh.values().stream().mapToInt(List::size).sum())
                .as("rows that migrations wrote")
                .isGreaterThan(20);
        new BenchOrders(beans).confirmed("Ida Lund", plan.today().plusDays(20), 10);
        jdbc.sql("update trade_numbers set overhang_mm = 7").update();
        assertThat(plan.now().entries()).hasSize(1);
        jdbc.sql("delete from stage_standard where stage = 'PACK'").update();
        assertThat(everything()).isNotEqualTo(fresh);
        CleanDatabase.now(dataSource);
        assertThat(everything()).isEqualTo(fresh);
        assertThat(plan.now().entries()).as("what was kept in memory").isEmpty();
        assertThat(new BenchOrders(beans)
                        .confirmed("Ida Lund", plan.today().plusDays(20), 10)
                        .id()
                        .value())
                .as("numbers begin anew")
                .isEqualTo(1);
    }

    /** Every row of every table as text, by table. */
    private Map<String, List<String>> everything() {
        Map<String, List<String>> rows = new LinkedHashMap<>();
        List<String> tables = jdbc.sql("select tablename from pg_tables where schemaname = 'public' order by 1")
                .query(String.class)
                .list();
        for (String table : tables) {
            rows.put(
                    table,
                    jdbc.sql("select t::text from public.\"" + table + "\" t order by 1")
                            .query(String.class)
                            .list());
        }
        return rows;
    }
}
