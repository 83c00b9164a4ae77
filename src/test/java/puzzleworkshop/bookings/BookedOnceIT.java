package puzzleworkshop.bookings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.Method;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.springframework.aop.support.AopUtils;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;

/** Every command that books, found by its annotation, is sent twice and by two at once: it books once. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class BookedOnceIT {

    @Autowired
    ApplicationContext beans;

    @Autowired
    DataSource dataSource;

    @Autowired
    JdbcClient jdbc;

    private Map<String, Supplier<BookingCases.Command>> cases;

    @BeforeEach
    void clean() {
        cases = new BookingCases(beans).all();
    }

    /** A new command that books comes into this table by its annotation, or this fails. */
    @Test
    void every_command_that_books_stands_in_the_table() {
        TreeSet<String> commands = new TreeSet<>();
        for (String name : beans.getBeanDefinitionNames()) {
            Class<?> type = AopUtils.getTargetClass(beans.getBean(name));
            for (Method method : type.getDeclaredMethods()) {
                if (method.isAnnotationPresent(Books.class)) {
                    commands.add(type.getSimpleName() + "." + method.getName());
                    assertThat(method.getParameterTypes()[0])
                            .as(method.toString())
                            .isEqualTo(BookingKey.class);
                }
            }
        }
        assertThat(commands).isNotEmpty().isEqualTo(new TreeSet<>(cases.keySet()));
    }

    @TestFactory
    Stream<DynamicTest> under_the_key_of_another_it_books_nothing_and_sent_again_nothing_more() {
        return cases.entrySet().stream()
                .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> {
                    CleanDatabase.now(dataSource);
                    BookingCases.Command command = entry.getValue().get();
                    // several orders ticked together are a booking each, under a part of the key
                    if (!entry.getKey().equals("Bench.tick")) {
                        refusedUnderTheKeyOfAnother(command);
                    }
                    BookingKey key = BookingKey.fresh();
                    Map<String, Long> before = rows();
                    Object first = command.book(key);
                    Map<String, Long> once = rows();
                    assertThat(once).as("it books something").isNotEqualTo(before);
                    Object second = command.book(key);
                    assertThat(rows()).as("rows after the same was sent again").isEqualTo(once);
                    assertThat(String.valueOf(second)).isEqualTo(String.valueOf(first));
                }));
    }

    private void refusedUnderTheKeyOfAnother(BookingCases.Command command) {
        jdbc.sql("insert into booking (key, said, made) values ('used', 'something else', 1)")
                .update();
        Map<String, Long> before = rows();
        assertThatThrownBy(() -> command.book(new BookingKey("used")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("bookings.other");
        assertThat(rows()).isEqualTo(before);
    }

    @TestFactory
    Stream<DynamicTest> of_two_who_send_the_same_at_once_one_books() {
        return cases.entrySet().stream()
                .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> {
                    CleanDatabase.now(dataSource);
                    Map<String, Long> alone =
                            increase(() -> entry.getValue().get(), command -> command.book(BookingKey.fresh()));
                    CleanDatabase.now(dataSource);
                    Map<String, Long> together = increase(() -> entry.getValue().get(), this::race);
                    assertThat(together).isEqualTo(alone);
                }));
    }

    private void race(BookingCases.Command command) throws Exception {
        BookingKey key = BookingKey.fresh();
        CyclicBarrier start = new CyclicBarrier(2);
        List<Future<String>> answers = new ArrayList<>();
        try (ExecutorService two = Executors.newFixedThreadPool(2)) {
            for (int i = 0; i < 2; i++) {
                answers.add(two.submit(() -> {
                    start.await();
                    return String.valueOf(command.book(key));
                }));
            }
        }
        assertThat(answers.get(0).get()).isEqualTo(answers.get(1).get());
    }

    private interface Send {
        void it(BookingCases.Command command) throws Exception;
    }

    private Map<String, Long> increase(Supplier<BookingCases.Command> prepare, Send send) throws Exception {
        BookingCases.Command command = prepare.get();
        Map<String, Long> before = rows();
        send.it(command);
        Map<String, Long> after = new TreeMap<>(rows());
        after.replaceAll((table, count) -> count - before.get(table));
        return after;
    }

    /** How many rows each table has. */
    private Map<String, Long> rows() {
        Map<String, Long> counts = new TreeMap<>();
        for (String table : jdbc.sql("select tablename from pg_tables where schemaname = 'public'")
                .query(String.class)
                .list()) {
            counts.put(
                    table,
                    jdbc.sql("select count(*) from \"" + table + "\"")
                            .query(Long.class)
                            .single());
        }
        return counts;
    }
}
