package puzzleworkshop.planning;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.schedule.Job.Wait;

/**
 * Words for a customer whose day changes, or from whom something is needed. They are sent by the person, from their own
 * mail program, telephone or the system's sheet for sharing; here it is kept that they were told, and in which words.
 */
@Service
public class Notices {

    private final WeekPlan plan;
    private final Orders orders;
    private final NoticeWording wording;

    Notices(WeekPlan plan, Orders orders, NoticeWording wording) {
        this.plan = plan;
        this.orders = orders;
        this.wording = wording;
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
        return about(entry.order(), entry.outlook().waitsFor().map(Wait::forWhat), instead);
    }

    /** The same for a day that somebody has chosen. */
    public Notice about(Order order, Optional<Wait.For> waitsFor, Optional<LocalDate> instead) {
        NoticeWording.Words words = wording.words(order, waitsFor, instead);
        return new Notice(words.subject(), words.body(), instead);
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

    /** The same with the words in which it was told; they are kept with the order. */
    @Transactional
    public void told(Order seen, Optional<Wait.For> waitsFor, Notice notice, String who) {
        Order order = orders.lock(seen.id());
        wording.told(order, waitsFor, notice.day(), new NoticeWording.Words(notice.subject(), notice.body()));
        told(order.id(), notice.day(), who);
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
