package puzzleworkshop.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.server.ErrorEvent;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.catalina.connector.ClientAbortException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import org.springframework.web.context.request.async.AsyncRequestNotUsableException;
import puzzleworkshop.support.MetricHouse;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FaultsOnScreensTest {

    private final ListAppender<ILoggingEvent> log = new ListAppender<>();
    private final Logger logger = (Logger) LoggerFactory.getLogger(Fault.class);
    private FaultsOnScreens faults;

    @BeforeEach
    void a_log_to_read() {
        log.start();
        logger.addAppender(log);
        faults = new FaultsOnScreens(MetricHouse.figures());
    }

    @AfterEach
    void nobody_reads_it_any_more() {
        logger.detachAppender(log);
        UI.setCurrent(null);
    }

    private List<ILoggingEvent> errors() {
        return log.list.stream().filter(line -> line.getLevel() == Level.ERROR).toList();
    }

    @Test
    void a_fault_on_a_screen_that_is_closed_already_is_logged_once_and_makes_no_second_fault() {
        UI.setCurrent(new UI());
        assertThatCode(() -> faults.happened(new ErrorEvent(new IllegalStateException("boom"))))
                .doesNotThrowAnyException();
        assertThat(errors()).hasSize(1);
    }

    @Test
    void a_browser_that_went_away_is_no_fault() {
        for (Exception gone : List.of(
                new IOException("Broken pipe"),
                new UncheckedIOException(new IOException("Connection reset by peer")),
                new ClientAbortException(new IOException("whatever the system says")),
                new RuntimeException(new AsyncRequestNotUsableException("ServletOutputStream failed to flush")))) {
            faults.happened(new ErrorEvent(gone));
        }
        assertThat(errors()).isEmpty();
    }

    @Test
    void an_unreadable_file_still_is_one() {
        faults.happened(new ErrorEvent(new UncheckedIOException(new IOException("No space left on device"))));
        assertThat(errors()).hasSize(1);
    }
}
