package puzzleworkshop.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.Property;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ReadyDates.NewWork;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ReadPaper;
import puzzleworkshop.workshop.Stage;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class WeekPlanIT {

    @Autowired
    WeekPlan plan;

    @Autowired
    WorkingTimes times;

    @Autowired
    WeekFeed feed;

    @Autowired
    TodaysList list;

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
                new Person("Jo", OpenHours.weekdays(new OpenHours.Span(540, 780)), Set.of(), EnumSet.of(Stage.PACK)));
        LocalDate day = plan.today().plusDays(40);
        times.free(Optional.of(jo), day, "away");
        times.free(Optional.empty(), day.plusDays(1), "holiday");
        Person kept = times.calendar().people().getLast();
        assertThat(kept.name()).isEqualTo("Jo");
        assertThat(kept.does()).containsExactly(Stage.PACK);
        assertThat(kept.daysOff()).containsExactly(day);
        assertThat(plan.now().calendar().holidays()).contains(day.plusDays(1));
        times.agree(new WorkingCalendar.Evening("Jo", day, new OpenHours.Span(1080, 1140)));
        times.agree(new WorkingCalendar.Evening("Jo", day, new OpenHours.Span(1080, 1200)));
        assertThat(times.calendar().evenings()).hasSize(1);
        assertThat(times.calendar().of(kept, day)).containsExactly(new OpenHours.Span(1080, 1200));
        assertThatThrownBy(() -> times.save(Optional.empty(), kept)).isInstanceOf(Refused.class);
        times.removePerson(jo);
        assertThat(times.calendar().people()).hasSize(1);
        assertThatThrownBy(() -> times.removePerson(times.people().getFirst().id())).isInstanceOf(Refused.class);
    }

    @Test
    void a_slower_way_of_delivery_promises_a_later_day() {
        long slow = times.save(new DeliveryWay(
                0, "Slow boat", EnumSet.of(DayOfWeek.MONDAY), LocalTime.NOON, 10, EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY)));
        NewWork usual = new NewWork(1, 24, Minutes.of(20), "birch", Optional.empty());
        NewWork later = new NewWork(1, 24, Minutes.of(20), "birch", Optional.of(slow));
        LocalDate one = plan.forecast(usual).orElseThrow().ready();
        LocalDate other = plan.forecast(later).orElseThrow().ready();
        assertThat(other).isAfter(one.plusDays(10));
        times.removeWay(slow);
    }

    /** RFC 5545, read back by another library than the one that writes it. */
    @Test
    void the_calendar_behind_the_secret_link_is_read_back_by_an_independent_parser() throws IOException, ParserException {
        LocalDate due = plan.today().plusDays(9);
        Order order = make.confirmed("Ida Lund; Sons, \\ Co\nA very long name that makes the line of the summary longer than 75 octets", due, 25);
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
        make.confirmed(ReadPaper.MANY_LETTERS, plan.today().plusDays(3), 25);
        assertThat(ReadPaper.text(list.pdf())).contains("never leave it alone").contains(ReadPaper.MANY_LETTERS.split(" ")[0]);
    }
}
