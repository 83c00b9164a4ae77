package puzzleworkshop.access.roles;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.AppenderBase;
import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.router.RouteConfiguration;
import jakarta.annotation.security.PermitAll;
import java.util.ArrayList;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.awaitility.Awaitility;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.security.core.context.SecurityContext;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.orders.Order;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/**
 * Every page that is open to makers opens for one, and shows what is left instead of a fault. A fault that is only logged,
 * because it happened beside the screen, is one too.
 */
@DatabaseTest
@Tag("slow")
@WithMockUser(username = "Ines", roles = "MAKER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class MakersScreensIT extends SpringBrowserlessTest {

    private static final long BESIDE_MILLISECONDS = 150;

    @Autowired
    ApplicationContext beans;

    @Autowired
    DataSource database;

    @Autowired
    Workshop workshop;

    private final Queue<String> logged = new ConcurrentLinkedQueue<>();

    private final AppenderBase<ILoggingEvent> listener = new AppenderBase<>() {
        @Override
        protected void append(ILoggingEvent event) {
            if (event.getLevel().isGreaterOrEqual(Level.ERROR)
                    || event.getLevel() == Level.WARN && event.getLoggerName().startsWith("puzzleworkshop")) {
                logged.add(event.getFormattedMessage()
                        + (event.getThrowableProxy() == null
                                ? ""
                                : ": " + event.getThrowableProxy().getClassName() + ": "
                                        + event.getThrowableProxy().getMessage()));
            }
        }
    };

    private Thread.UncaughtExceptionHandler before;

    @BeforeEach
    void listen() {
        before = Thread.getDefaultUncaughtExceptionHandler();
        Thread.setDefaultUncaughtExceptionHandler((thread, fault) -> logged.add(thread.getName() + ": " + fault));
        listener.start();
        root().addAppender(listener);
    }

    @AfterEach
    void listenNoMore() {
        root().detachAppender(listener);
        Thread.setDefaultUncaughtExceptionHandler(before);
    }

    private static Logger root() {
        return (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    }

    @Test
    void what_is_only_logged_is_heard() {
        UiPush.beside("a fault beside a screen", () -> {
            throw new IllegalStateException("to be heard");
        });
        // Awaitility itself ends on a fault of any thread, and this one is meant.
        Awaitility.await()
                .dontCatchUncaughtExceptions()
                .untilAsserted(() -> assertThat(logged).anyMatch(line -> line.contains("to be heard")));
        logged.clear();
        LoggerFactory.getLogger(MakersScreensIT.class).error("and this");
        assertThat(logged).containsExactly("and this");
    }

    @Test
    void every_page_open_to_makers_opens() throws InterruptedException {
        CleanDatabase.now(database);
        Order order = byTheProgram(() -> {
            BenchOrders made = new BenchOrders(beans);
            Order one = made.confirmed("Ada Reed", workshop.today().plusDays(20), 25);
            made.bringTo(one.id(), Stage.CUT);
            return one;
        });
        List<String> wrong = new ArrayList<>();
        List<String> opened = new ArrayList<>();
        for (String path : paths(order)) {
            try {
                UI.getCurrentOrThrow().navigate(path);
                Component view = (Component) getCurrentView();
                find(Component.class, view).all();
                // what a page works out beside itself comes later, and may fail later
                for (int i = 0; i < 4; i++) {
                    Thread.sleep(BESIDE_MILLISECONDS);
                    roundTrip();
                }
                opened.add(path);
                if (view.getClass().getSimpleName().contains("Fault")) {
                    wrong.add(path + ": a fault");
                }
            } catch (RuntimeException fault) {
                wrong.add(path + ": " + fault);
            }
        }
        assertThat(wrong).isEmpty();
        assertThat(logged).as("logged while the pages were open").isEmpty();
        assertThat(opened).hasSizeGreaterThan(10);
    }

    private static List<String> paths(Order order) {
        Stream<String> plain = RouteConfiguration.forSessionScope().getAvailableRoutes().stream()
                .filter(route -> route.getNavigationTarget().isAnnotationPresent(PermitAll.class))
                .map(route -> route.getTemplate())
                .map(template -> template.replaceAll("/:[^/]*", ""))
                .filter(template -> !template.contains(":"));
        return Stream.concat(plain, Stream.of("orders/" + order.number(), "bench/cut", "bench/print"))
                .distinct()
                .sorted()
                .toList();
    }

    private static <T> T byTheProgram(java.util.function.Supplier<T> work) {
        SecurityContext maker = SecurityContextHolder.getContext();
        SecurityContextHolder.clearContext();
        try {
            return work.get();
        } finally {
            SecurityContextHolder.setContext(maker);
        }
    }
}
