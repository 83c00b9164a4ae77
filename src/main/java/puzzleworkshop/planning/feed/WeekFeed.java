package puzzleworkshop.planning.feed;

import biweekly.ICalVersion;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalWriter;
import biweekly.property.DateEnd;
import biweekly.property.DateStart;
import biweekly.property.DateTimeStamp;
import biweekly.util.DateTimeComponents;
import biweekly.util.ICalDate;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Base64;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.PlanStore;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.workshop.Workshop;

/**
 * The calendar of promised days for people's own calendar programs (iCalendar, RFC 5545), behind a secret link. Only a
 * hash of the secret is kept, so a link is shown once and made anew when it is lost; making one ends the one before.
 */
@Service
public class WeekFeed {

    private static final SecureRandom RANDOM = new SecureRandom();
    private static final int SECRET_BYTES = 24;
    private static final int MOST_OCTETS = 75;

    private final PlanStore store;
    private final WeekPlan plan;
    private final Workshop workshop;
    private final Formatter figures;
    private final Clock clock;

    WeekFeed(PlanStore store, WeekPlan plan, Workshop workshop, Formatter figures, Clock clock) {
        this.store = store;
        this.plan = plan;
        this.workshop = workshop;
        this.figures = figures;
        this.clock = clock;
    }

    /** Makes a new secret for the link and ends the one before. */
    @Transactional
    public String renew(String who) {
        byte[] secret = new byte[SECRET_BYTES];
        RANDOM.nextBytes(secret);
        String token = Base64.getUrlEncoder().withoutPadding().encodeToString(secret);
        store.addFeed(hash(token), who, clock.instant());
        return token;
    }

    /** Ends the link. */
    @Transactional
    public void end() {
        store.endFeeds(clock.instant());
    }

    public boolean isShared() {
        return store.hasFeed();
    }

    /** The calendar file for a secret; empty when the secret is not, or no longer, known. */
    @Transactional(readOnly = true)
    public Optional<String> calendar(String token) {
        return store.isFeed(hash(token)) ? Optional.of(write()) : Optional.empty();
    }

    private String write() {
        ICalendar calendar = new ICalendar();
        calendar.setProductId("-//Puzzle Workshop//EN");
        calendar.setName(figures.text("planning.feed.name", workshop.profile().name()));
        for (WeekPlan.Entry entry : plan.now().entries()) {
            entry.order().promised().ifPresent(day -> calendar.addEvent(event(entry, day)));
        }
        return folded(unfolded(calendar));
    }

    private static String unfolded(ICalendar calendar) {
        StringWriter text = new StringWriter();
        try (ICalWriter writer = new ICalWriter(text, ICalVersion.V2_0)) {
            writer.getVObjectWriter().getFoldedLineWriter().setLineLength(null);
            writer.write(calendar);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    /** Lines of at most 75 octets (RFC 5545, 3.1); the library counts characters, which is too long for '×' or 'é'. */
    static String folded(String lines) {
        StringBuilder folded = new StringBuilder();
        for (String line : lines.split("\r\n")) {
            int octets = 0;
            for (int i = 0; i < line.length(); ) {
                String letter = Character.toString(line.codePointAt(i));
                int more = letter.getBytes(StandardCharsets.UTF_8).length;
                if (octets + more > MOST_OCTETS) {
                    folded.append("\r\n ");
                    octets = 1;
                }
                folded.append(letter);
                octets += more;
                i += letter.length();
            }
            folded.append("\r\n");
        }
        return folded.toString();
    }

    private VEvent event(WeekPlan.Entry entry, LocalDate day) {
        Order order = entry.order();
        VEvent event = new VEvent();
        event.setUid("order-" + order.number() + "@puzzle-workshop");
        event.setDateTimeStamp(new DateTimeStamp(moment(clock.instant())));
        event.setDateStart(new DateStart(allDay(day)));
        event.setDateEnd(new DateEnd(allDay(day.plusDays(1))));
        event.setSummary(figures.text(
                "planning.feed.summary", order.number(), order.customer().name()));
        event.setDescription(figures.text(
                "planning.feed.description",
                order.quantity(),
                order.puzzle().finished(),
                order.puzzle().pieces(),
                figures.text(
                        "planning.verdict." + entry.outlook().verdict().name(),
                        entry.outlook().lateDays()),
                figures.say(entry.outlook().cause()),
                entry.way().name()));
        return event;
    }

    private static ICalDate allDay(LocalDate day) {
        return new ICalDate(
                new DateTimeComponents(day.getYear(), day.getMonthValue(), day.getDayOfMonth(), 0, 0, 0, false), false);
    }

    private static ICalDate moment(Instant at) {
        LocalDateTime utc = LocalDateTime.ofInstant(at, ZoneOffset.UTC);
        return new ICalDate(
                new DateTimeComponents(
                        utc.getYear(),
                        utc.getMonthValue(),
                        utc.getDayOfMonth(),
                        utc.getHour(),
                        utc.getMinute(),
                        utc.getSecond(),
                        true),
                true);
    }

    private static byte[] hash(String token) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8));
        } catch (NoSuchAlgorithmException never) {
            throw new IllegalStateException(never);
        }
    }
}
