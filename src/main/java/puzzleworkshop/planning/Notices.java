package puzzleworkshop.planning;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.schedule.Job.Hold;
import puzzleworkshop.workshop.Workshop;

/**
 * Words for a customer whose day changes, or from whom something is needed. They are sent by the person, from their own
 * mail program or telephone; here it is kept that they were told.
 */
@Service
public class Notices {

    private final WeekPlan plan;
    private final Orders orders;
    private final Workshop workshop;
    private final Formatter figures;

    Notices(WeekPlan plan, Orders orders, Workshop workshop, Formatter figures) {
        this.plan = plan;
        this.orders = orders;
        this.workshop = workshop;
        this.figures = figures;
    }

    /**
     * A message as it is proposed.
     *
     * @param day to be promised instead; empty when the promised day stands
     */
    public record Notice(String subject, String body, Optional<LocalDate> day) {}

    /** What could be told about an order as it stands: another day, something that is needed, or that all is well. */
    public Notice about(Entry entry) {
        Optional<LocalDate> instead = plan.keeps(entry)
                .filter(day -> entry.order().promised().map(day::isAfter).orElse(true));
        return about(entry.order(), entry.outlook().hold().map(Hold::forWhat), instead);
    }

    /** The same for a day that somebody has chosen. */
    public Notice about(Order order, Optional<Hold.For> hold, Optional<LocalDate> instead) {
        String what = instead.isPresent()
                ? "later"
                : hold.map(h -> "waits." + h.name()).orElse("on-time");
        String number = order.number();
        Object day = instead.or(order::promised).map(figures::day).orElse("");
        String middle = figures.text(
                "planning.notice." + what,
                number,
                order.promised().map(figures::day).orElse(""),
                day,
                order.puzzle().pieces());
        String needed = instead.isPresent()
                ? hold.map(h -> "\n\n" + figures.text("planning.notice.waits." + h.name(), number))
                        .orElse("")
                : "";
        String body = figures.text(
                "planning.notice.frame",
                order.customer().name(),
                middle + needed,
                workshop.profile().name());
        return new Notice(
                figures.text(
                        instead.isPresent() ? "planning.notice.subject.later" : "planning.notice.subject", number, day),
                body,
                instead);
    }

    /** Keeps that the customer was told; with another day, that one is promised from now on. */
    @Transactional
    public void told(OrderId id, Optional<LocalDate> day, String who) {
        Order order = orders.lock(id);
        if (day.isPresent() && !day.equals(order.promised())) {
            orders.promise(id, day.get(), who);
        }
        orders.note(
                id,
                day.map(d -> Sentence.of("planning.history.told-day", d))
                        .orElseGet(() -> Sentence.of("planning.history.told")),
                who);
    }

    /** The customer's address for mail, when the contact is one. */
    public static Optional<String> mailOf(Customer customer) {
        String contact = customer.contact().strip();
        return contact.matches("[^\\s@<>?&]+@[^\\s@<>?&]+") ? Optional.of(contact) : Optional.empty();
    }

    /** A link that opens the person's own mail program with the message in it (RFC 6068). */
    public static String mailto(String address, String subject, String body) {
        return "mailto:" + encoded(address).replace("%40", "@") + "?subject=" + encoded(subject) + "&body="
                + encoded(body.replace("\r\n", "\n").replace("\n", "\r\n"));
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
