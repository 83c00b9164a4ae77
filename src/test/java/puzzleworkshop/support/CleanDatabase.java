package puzzleworkshop.support;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.springframework.core.Ordered;
import org.springframework.test.context.TestContext;
import org.springframework.test.context.TestExecutionListener;
import puzzleworkshop.runtime.VersionedCache;

/**
 * Brings the database back to what the migrations left: every table emptied, rows that migrations wrote put back,
 * sequences at their beginning, nothing kept in memory of what was there before. Those rows are set aside in a schema of their own
 * when first asked. The few rows of a test are deleted: truncate makes new files for every table and index, hundreds of them.
 */
public class CleanDatabase implements TestExecutionListener, Ordered {

    private static final String DEADLOCK = "40P01";
    private static final int ROUNDS = 10;

    @Override
    public int getOrder() {
        // Before Spring's own listeners open a test's transaction.
        return 1500;
    }

    @Override
    public void beforeTestClass(TestContext context) {
        now(context.getApplicationContext().getBean(DataSource.class));
    }

    @Override
    public void afterTestMethod(TestContext context) {
        TestClock.reset();
    }

    /** What a test before left running may still read or write; PostgreSQL ends one of two that wait for each other, then ours tries again. */
    public static void now(DataSource dataSource) {
        for (int round = 1; ; round++) {
            try {
                empty(dataSource);
                return;
            } catch (SQLException e) {
                if (!DEADLOCK.equals(e.getSQLState()) || round == ROUNDS) {
                    throw new IllegalStateException(e);
                }
            }
        }
    }

    private static void empty(DataSource dataSource) throws SQLException {
        try (Connection connection = dataSource.getConnection();
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            statement.execute(SET_ASIDE);
            statement.execute("set local session_replication_role = replica");
            statement.execute(EMPTY_AND_PUT_BACK);
            connection.commit();
            connection.setAutoCommit(true);
            VersionedCache.forgetEverything();
        }
    }

    private static final String SET_ASIDE = """
            do $$
            declare t text;
            begin
                if not exists (select 1 from pg_namespace where nspname = 'seed') then
                    create schema seed;
                    for t in select tablename from pg_tables
                             where schemaname = 'public' and tablename <> 'flyway_schema_history' loop
                        execute format('create table seed.%I as table public.%I', t, t);
                    end loop;
                end if;
            end $$
            """;

    private static final String EMPTY_AND_PUT_BACK = """
            do $$
            declare
                every_table text;
                t text;
                cols text;
                s record;
            begin
                select string_agg(format('public.%I', tablename), ', ') into every_table from pg_tables
                 where schemaname = 'public' and tablename <> 'flyway_schema_history';
                if every_table is null then
                    return;
                end if;
                -- whoever is still writing is waited for; who only reads may go on, so that they cannot wait for each other
                execute 'lock table ' || every_table || ' in exclusive mode';
                for t in select tablename from pg_tables
                         where schemaname = 'public' and tablename <> 'flyway_schema_history' loop
                    execute format('delete from public.%I', t);
                end loop;
                for s in select sequencename, start_value from pg_sequences where schemaname = 'public' loop
                    perform setval(format('public.%I', s.sequencename), s.start_value, false);
                end loop;
                for t in select tablename from pg_tables where schemaname = 'seed' loop
                    select string_agg(quote_ident(attname), ', ' order by attnum) into cols from pg_attribute
                     where attrelid = format('public.%I', t)::regclass
                       and attnum > 0 and not attisdropped and attgenerated = '';
                    execute format('insert into public.%I (%s) overriding system value select %s from seed.%I',
                                   t, cols, cols, t);
                end loop;
                for s in select c.relname as t, a.attname as col,
                                pg_get_serial_sequence(format('public.%I', c.relname), a.attname) as seq
                           from pg_class c join pg_attribute a on a.attrelid = c.oid
                          where c.relnamespace = 'public'::regnamespace and c.relkind = 'r'
                            and a.attidentity <> '' and not a.attisdropped loop
                    execute format('select setval(%L, greatest(max(%I), 1), max(%I) is not null) from public.%I',
                                   s.seq, s.col, s.col, s.t);
                end loop;
            end $$
            """;
}
