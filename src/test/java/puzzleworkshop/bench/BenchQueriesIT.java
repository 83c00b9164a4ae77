package puzzleworkshop.bench;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;

/** What a page of the shop floor asks of the database is counted where Spring sends it, by Spring's own log. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class BenchQueriesIT {

    @Autowired
    BeanFactory beans;

    @Autowired
    Bench bench;

    @Autowired
    WeekPlan plan;

    @Test
    void the_bench_asks_no_more_for_many_orders_than_for_few() {
        laminating(2);
        Map<String, Long> few = queries();
        laminating(6);
        Map<String, Long> many = queries();
        assertThat(bench.queue(Stage.LAMINATE))
                .hasSize(8)
                .allMatch(waiting -> waiting.boards().size() == 1);
        assertThat(bench.undoable()).hasSize(8);
        assertThat(few).isNotEmpty();
        assertThat(many).isEqualTo(few);
    }

    private void laminating(int orders) {
        BenchOrders made = new BenchOrders(beans);
        for (int i = 0; i < orders; i++) {
            made.bringTo(
                    made.confirmed("Customer " + i, plan.today().plusDays(20), 25)
                            .id(),
                    Stage.LAMINATE);
        }
    }

    /** Of the plan made anew, the queue with its boards, and what can be taken back. */
    private Map<String, Long> queries() {
        VersionedCache.forgetEverything();
        Logger log = (Logger) LoggerFactory.getLogger(JdbcTemplate.class);
        Level before = log.getLevel();
        ListAppender<ILoggingEvent> asked = new ListAppender<>();
        asked.start();
        log.addAppender(asked);
        log.setLevel(Level.DEBUG);
        try {
            bench.queue(Stage.LAMINATE);
            bench.undoable();
        } finally {
            log.setLevel(before);
            log.detachAppender(asked);
        }
        return asked.list.stream()
                .map(ILoggingEvent::getFormattedMessage)
                .filter(line -> line.startsWith("Executing prepared SQL statement"))
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
    }
}
