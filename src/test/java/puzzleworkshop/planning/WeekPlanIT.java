package puzzleworkshop.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VEvent;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.Receipts;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.OpenHours;
import puzzleworkshop.planning.calendar.Worker;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.feed.WeekFeed;
import puzzleworkshop.planning.schedule.DueVerdict;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ReadPaper;
import puzzleworkshop.support.TestClock;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class WeekPlanIT {

    @Autowired
    WeekPlan plan;

    @Autowired
    WorkingTimes times;

    @Autowired
    Workshop workshop;

    @Autowired
    WeekFeed feed;

    @Autowired
    TodaysList list;

    @Autowired
    Notices notices;

    @Autowired
    PaymentsAwaited payments;

    @Autowired
    Receipts receipts;

    @Autowired
    GangRuns gang;

    @Autowired
    PrintRoom printRoom;

    @Autowired
    PrintMedia media;

    @Autowired
    Orders orders;

    @Autowired
    BeanFactory beans;

    private BenchOrders make;

    @BeforeEach
    void orders_can_be_made() {
        make = new BenchOrders(beans);
    }

    @Test
    void a_new_workshop_has_a_maker_a_laser_and_two_ways_of_delivery() {
        WorkingCalendar calendar = times.calendar();
        assertThat(calendar.people()).hasSize(1);
        assertThat(calendar.people().getFirst().hours().minutesAWeek()).isEqualTo(40 * 60);
        assertThat(calendar.laser().byDay()).hasSize(5);
        assertThat(times.ways()).hasSize(2);
        assertThat(plan.ways().getFirst().name()).isEqualTo(times.usualWay().name());
    }

    @Test
    void hours_free_days_and_evenings_are_kept_and_the_plan_is_made_anew() {
        long jo = times.save(
                Optional.empty(),
                new Worker("Jo", OpenHours.weekdays(new OpenHours.Span(540, 780)), Set.of(), EnumSet.of(Stage.PACK)));
        LocalDate day = plan.today().plusDays(40);
        times.free(Optional.of(jo), day, "away");
        times.free(Optional.empty(), day.plusDays(1), "holiday");
        Worker kept = times.calendar().people().getLast();
        assertThat(kept.name()).isEqualTo("Jo");
        assertThat(kept.does()).containsExactly(Stage.PACK);
        assertThat(kept.daysOff()).containsExactly(day);
        times.close(day.plusDays(2), "our own holidays");
        assertThat(plan.now().calendar().free().closed()).contains(day.plusDays(1), day.plusDays(2));
        assertThat(plan.now().calendar().free().undelivered())
                .contains(day.plusDays(1))
                .doesNotContain(day.plusDays(2));
        times.agree(new WorkingCalendar.Evening("Jo", day, new OpenHours.Span(1080, 1140)));
        times.agree(new WorkingCalendar.Evening("Jo", day, new OpenHours.Span(1080, 1200)));
        assertThat(times.calendar().evenings()).hasSize(1);
        assertThat(times.calendar().of(kept, day)).containsExactly(new OpenHours.Span(1080, 1200));
        assertThatThrownBy(() -> times.save(Optional.empty(), kept)).isInstanceOf(Refused.class);
        times.removePerson(jo);
        assertThat(times.calendar().people()).hasSize(1);
        assertThatThrownBy(() -> times.removePerson(times.people().getFirst().id()))
                .isInstanceOf(Refused.class);
    }

    @Test
    void a_slower_way_of_delivery_promises_a_later_day() {
        long slow = times.save(new DeliveryWay(
                0,
                "Slow boat",
                EnumSet.of(DayOfWeek.MONDAY),
                LocalTime.NOON,
                10,
                EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY)));
        NewWork usual = new NewWork(1, 24, Minutes.of(20), "birch", Optional.empty());
        NewWork later = new NewWork(1, 24, Minutes.of(20), "birch", Optional.of(slow));
        LocalDate one = plan.forecast(usual).orElseThrow().ready();
        LocalDate other = plan.forecast(later).orElseThrow().ready();
        assertThat(other).isAfter(one.plusDays(10));
        times.removeWay(slow);
    }

    private Optional<Job.Wait.For> waitsFor(Order order) {
        return plan.now().of(order.id()).orElseThrow().outlook().waitsFor().map(Job.Wait::forWhat);
    }

    @Test
    void an_order_waits_for_its_approval_or_its_board_and_says_what_holds_if_it_comes() {
        LocalDate due = plan.today().plusDays(40);
        Order unseen = make.waitingForApproval("Tom Reed", due, 10);
        assertThat(waitsFor(unseen)).contains(Job.Wait.For.APPROVAL);
        Sentence cause = plan.now().of(unseen.id()).orElseThrow().outlook().cause();
        assertThat(cause.key()).isEqualTo("planning.cause.resumes");
        assertThat(cause.arguments().getFirst()).isEqualTo(Sentence.of("planning.cause.waits.APPROVAL", plan.today()));
        Order boardless = make.confirmedWithoutBoard("Tom Reed", due, 10);
        assertThat(waitsFor(boardless)).contains(Job.Wait.For.BOARD);
        assertThat(waitsFor(make.confirmed("Tom Reed", due, 10))).isEmpty();
    }

    @Test
    void an_order_of_two_boards_waits_as_long_as_one_of_them_is_missing() {
        Order another = make.confirmed("Tom Reed", plan.today().plusDays(40), 10);
        Order order = make.confirmed("Tom Reed", plan.today().plusDays(40), 10);
        blank(order, 1, order);
        blank(order, 2, another);
        assertThat(waitsFor(order)).contains(Job.Wait.For.BOARD);
        Order whole = make.confirmed("Tom Reed", plan.today().plusDays(40), 10);
        blank(whole, 1, whole);
        assertThat(waitsFor(whole)).isEmpty();
    }

    /** One of its blanks, on the board that is held for an order. */
    private void blank(Order order, int position, Order holder) {
        beans.getBean(JdbcClient.class)
                .sql("""
                    insert into order_blank (order_id, position, across, down, width_mm, height_mm, x_mm, y_mm, degrees, sheet_id)
                    select :order, :position, 1, 1, 222, 172, 0, 0, 0, sheet_id
                    from sheet_reservation where order_id = :holder and ended_at is null
                    """)
                .param("order", order.id().value())
                .param("position", position)
                .param("holder", holder.id().value())
                .update();
    }

    @Test
    void an_order_whose_payment_comes_first_waits_until_it_has_come() {
        Order order = make.confirmed("Tom Reed", plan.today().plusDays(40), 10);
        Money half = order.price().gross().dividedBy(2).rounded();
        payments.ask(order.id(), half, "Robin");
        assertThat(waitsFor(order)).contains(Job.Wait.For.PAYMENT);
        receipts.receive(
                BookingKey.fresh(),
                order.id(),
                half.minus(Money.of("0.01", half.currency().getCurrencyCode())),
                Payment.Way.CASH,
                plan.today(),
                "",
                "Robin");
        assertThat(waitsFor(order)).contains(Job.Wait.For.PAYMENT);
        receipts.receive(
                BookingKey.fresh(),
                order.id(),
                Money.of("0.01", half.currency().getCurrencyCode()),
                Payment.Way.CASH,
                plan.today(),
                "",
                "Robin");
        assertThat(waitsFor(order)).isEmpty();
        Order other = make.confirmed("Tom Reed", plan.today().plusDays(40), 10);
        payments.ask(other.id(), half, "Robin");
        payments.letGo(other.id(), "Robin");
        assertThat(waitsFor(other)).isEmpty();
        assertThatThrownBy(() -> payments.ask(other.id(), other.price().gross().times(2), "Robin"))
                .isInstanceOf(Refused.class);
    }

    @Test
    void the_prints_of_a_planned_run_are_made_in_one_go_however_far_apart_their_days_are() {
        Order soon = make.confirmed("Tom Reed", plan.today().plusDays(43), 10);
        Order later = make.confirmed("Tom Reed", plan.today().plusDays(90), 10);
        assertThat(batch(soon, Stage.PRINT)).isNotEqualTo(batch(later, Stage.PRINT));
        var run = gang.propose(
                media.all().getFirst().id().orElseThrow(), plan.today().plusDays(100), "Robin");
        assertThat(run.planned()).extracting(item -> item.order().id()).contains(soon.id(), later.id());
        for (Stage stage : new Stage[] {Stage.PRINT, Stage.LAMINATE}) {
            assertThat(batch(soon, stage)).isEqualTo(batch(later, stage));
            assertThat(batch(soon, stage).batchSize()).isEqualTo((int) run.planned().stream()
                    .map(item -> item.order().id())
                    .distinct()
                    .count());
        }
        printRoom.discard(run.id(), "Robin");
        assertThat(batch(soon, Stage.PRINT)).isNotEqualTo(batch(later, Stage.PRINT));
    }

    private record Batch(LocalDateTime start, LocalDateTime end, int batchSize) {}

    private Batch batch(Order order, Stage stage) {
        return plan.now().plan().workOf(order.id().value()).stream()
                .filter(work -> work.stage() == stage)
                .map(work -> new Batch(work.start(), work.end(), work.batchSize()))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_customer_who_was_told_another_day_has_it_promised_and_it_stands_in_the_history() {
        // Laminate rests over night, so a day promised for today cannot be kept.
        Order order = make.confirmed("Tom Reed", plan.today(), 10);
        WeekPlan.Entry entry = plan.now().of(order.id()).orElseThrow();
        assertThat(entry.outlook().verdict()).isEqualTo(DueVerdict.LATE);
        Notices.Notice notice = notices.about(entry);
        LocalDate day = notice.day().orElseThrow();
        assertThat(day).isAfterOrEqualTo(plan.today());
        assertThat(notice.subject()).contains(order.number());
        assertThat(notice.body()).contains("Tom Reed").contains("\n\n").doesNotContain("{");
        notices.told(order.id(), Optional.of(day), "Robin");
        assertThat(plan.now().of(order.id()).orElseThrow().order().promised()).contains(day);
        assertThat(plan.now().of(order.id()).orElseThrow().outlook().isLate()).isFalse();
        assertThat(orders.history(order.id()))
                .anyMatch(line -> line.what().key().equals("planning.history.told-day")
                        && line.who().equals("Robin"));
    }

    /** The example of RFC 6068, section 6.1: blanks are %20 and lines end in %0D%0A. */
    @Test
    void a_mail_link_is_written_as_the_standard_asks() {
        assertThat(Notices.mailto("infobot@example.com", "Ready & done?", "send current-issue\nsend index"))
                .isEqualTo(
                        "mailto:infobot@example.com?subject=Ready%20%26%20done%3F&body=send%20current-issue%0D%0Asend%20index");
        assertThat(Notices.mailOf(Customer.newcomer("Tom", "0155 01 7734", ""))).isEmpty();
        assertThat(Notices.mailOf(Customer.newcomer("Tom", "tom@reed.example?bcc=x@y.example", "")))
                .isEmpty();
        assertThat(Notices.mailOf(Customer.newcomer("Tom", " tom@reed.example", "")))
                .contains("tom@reed.example");
    }

    /** RFC 5545, read back by another library than the one that writes it. */
    @Test
    void the_calendar_behind_the_secret_link_is_read_back_by_an_independent_parser()
            throws IOException, ParserException {
        LocalDate due = plan.today().plusDays(9);
        Order order = make.confirmed(
                "Ida Lund; Sons, \\ Co\nA very long name that makes the line of the summary longer than 75 octets",
                due,
                25);
        String token = feed.renew("Robin");
        String file = feed.calendar(token).orElseThrow();
        assertThat(file.lines()).allMatch(line -> line.getBytes(StandardCharsets.UTF_8).length <= 75);
        Calendar calendar = new CalendarBuilder().build(new StringReader(file));
        List<VEvent> events = calendar.getComponents("VEVENT");
        VEvent event = events.stream()
                .filter(e -> value(e, Property.UID).contains(order.number()))
                .findFirst()
                .orElseThrow();
        assertThat(value(event, Property.DTSTART)).isEqualTo(due.toString().replace("-", ""));
        assertThat(value(event, Property.DTSTAMP)).endsWith("Z");
        assertThat(value(event, Property.SUMMARY)).contains("Ida Lund; Sons, \\ Co");
    }

    private static String value(VEvent event, String property) {
        Property found = event.<Property>getProperty(property).orElseThrow();
        return found.getValue();
    }

    @Test
    void a_link_made_anew_ends_the_one_before_and_an_ended_one_shows_nothing() {
        String first = feed.renew("Robin");
        String second = feed.renew("Robin");
        assertThat(feed.calendar(first)).isEmpty();
        assertThat(feed.calendar(second)).isPresent();
        feed.end();
        assertThat(feed.calendar(second)).isEmpty();
        assertThat(feed.calendar("")).isEmpty();
    }

    @Test
    void todays_list_is_a_sheet_of_paper_with_its_cautions() throws IOException {
        TestClock.set(
                LocalDate.of(2027, 3, 3).atTime(7, 0).atZone(workshop.zone()).toInstant());
        make.confirmed(ReadPaper.MANY_LETTERS, plan.today().plusDays(3), 25);
        assertThat(ReadPaper.text(list.pdf()))
                .contains("never leave it alone")
                .contains(ReadPaper.MANY_LETTERS.split(" ")[0]);
    }
}
