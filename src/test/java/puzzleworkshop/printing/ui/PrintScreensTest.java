package puzzleworkshop.printing.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.test.context.support.WithMockUser;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.display.Still;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.StillHtml;

@DatabaseTest
@Transactional
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PrintScreensTest extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    GangRuns runs;

    @Autowired
    PrintRoom room;

    @Autowired
    PrintMedia media;

    @Autowired
    JdbcClient jdbc;

    private Order order;

    @BeforeEach
    void an_approved_order_waits() {
        order = new BenchOrders(beans)
                .confirmedWithoutBoard("Ida Lind", LocalDate.now().plusDays(9), 20);
    }

    @Test
    void a_picture_too_large_for_the_chosen_medium_is_said_with_what_takes_it_and_cannot_be_proposed() {
        // BenchOrders make 200 × 150 mm: no sticker of that lies on 150 × 100 mm.
        media.keep(new PrintMedium(
                Optional.empty(),
                "Postcard",
                PrintMedium.Kind.SHEET,
                Size.mm(150, 100),
                Length.mm(3),
                Length.mm(4),
                Optional.empty(),
                Optional.empty(),
                false));
        navigate(PrintRunsView.class);
        assertThat(words()).noneMatch(text -> text.contains("too large"));
        assertThat(propose().isEnabled()).isTrue();
        chooseMedium("Postcard");
        assertThat(words()).anyMatch(text -> text.contains("too large for Postcard"));
        assertThat(words()).anyMatch(text -> text.startsWith("fits on") && text.contains("A4") && text.contains("A3"));
        assertThat(propose().isEnabled()).isFalse();
    }

    @Test
    void an_open_run_is_shown_with_its_bound_and_is_confirmed_by_its_button() {
        PrintRun run = propose("A3");
        navigate(PrintRunsView.class);
        assertThat(words()).anyMatch(text -> text.contains("cannot be fewer"));
        assertThat(words()).noneMatch(text -> text.contains("no crosses"));
        test(find(Button.class).withText("Confirm").single()).click();
        assertThat(runs.get(run.id()).state().name()).isEqualTo("CONFIRMED");
        assertThat(find(Button.class).withText("Printed").exists()).isTrue();
    }

    @Test
    void a_past_run_says_when_by_whom_on_how_many_sheets_and_what_was_spoiled() {
        PrintRun run = propose("A3");
        room.confirm(run.id(), "Robin");
        room.printed(
                BookingKey.fresh(),
                run.id(),
                Set.of(run.items().getFirst().id()),
                "a stripe",
                Optional.of("test"),
                "Ada");
        navigate(PrintRunsView.class);
        assertThat(words()).anyMatch(text -> text.equals("1 sheet, 1 print"));
        assertThat(words()).anyMatch(text -> text.endsWith(", Ada"));
        assertThat(words()).anyMatch(text -> text.contains("1 spoiled"));
        assertThat(words()).anyMatch(text -> text.contains("Printed, one sheet, one print spoiled"));
        assertThat(words()).anyMatch(text -> text.equals(order.number()));
    }

    @Test
    void a_run_says_which_prints_have_an_overhang_too_small_for_its_crosses() {
        PrintRun run = propose("A3");
        jdbc.sql("update print_run_item set overhang_mm = 2 where run_id = :run")
                .param("run", run.id())
                .update();
        navigate(PrintRunsView.class);
        assertThat(words()).anyMatch(text -> text.contains("no crosses: an overhang of 2 mm"));
    }

    private PrintRun propose(String medium) {
        return runs.propose(named(medium).id().orElseThrow(), LocalDate.now().plusDays(30), "Robin");
    }

    private PrintMedium named(String name) {
        return media.all().stream()
                .filter(medium -> medium.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @SuppressWarnings("unchecked")
    private void chooseMedium(String name) {
        ((Select<PrintMedium>) find(Select.class).all().getFirst()).setValue(named(name));
    }

    private Button propose() {
        return find(Button.class).withText("Propose a run").single();
    }

    /** Verdicts too: their words stand in a span. */
    private List<String> words() {
        return Stream.concat(
                        find(Span.class).all().stream().map(Span::getText),
                        StillHtml.words(find(Still.class).all(), "*").stream())
                .toList();
    }
}
