package puzzleworkshop.letters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.MessagingException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.access.AsPerson;
import puzzleworkshop.letters.mail.MailAccount;
import puzzleworkshop.letters.mail.MailAccounts;
import puzzleworkshop.letters.mail.MailDesk;
import puzzleworkshop.letters.mail.MailState;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.Receipts;
import puzzleworkshop.papers.SoldOrders;
import puzzleworkshop.payments.Payment;
import puzzleworkshop.planning.Notices;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.TestClock;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class LettersIT {

    @Autowired
    BeanFactory beans;

    @Autowired
    Letters letters;

    @Autowired
    Wordings wordings;

    @Autowired
    Reminders reminders;

    @Autowired
    MailAccounts accounts;

    @Autowired
    Orders orders;

    @Autowired
    Invoices invoices;

    @Autowired
    Receipts receipts;

    @Autowired
    Notices notices;

    @Autowired
    Workshop workshop;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource database;

    private final GreenMail server = new GreenMail(new ServerSetup(0, "localhost", "smtp"));

    @BeforeEach
    void an_empty_workshop() {
        CleanDatabase.now(database);
        AsPerson.owner("Robin");
    }

    @AfterEach
    void no_server_left() {
        server.stop();
        AsPerson.nobody();
    }

    private Order confirmed() {
        Order order = new SoldOrders(beans).confirmed("Ada Reed", 1);
        jdbc.sql("update customer set contact = 'ada@reed.example'").update();
        return orders.get(order.id());
    }

    private static MailAccount account(int port, String user) {
        return new MailAccount(
                true, "localhost", port, MailAccount.Security.NONE, user, "Puzzles", "post@puzzles.example", false);
    }

    @Test
    void a_letter_sent_by_hand_is_kept_with_its_order_and_stands_in_its_history() {
        Order order = confirmed();
        Draft draft = letters.draft(order.id(), LetterKind.THANK_YOU, Map.of());
        assertThat(draft.body()).contains("Ada Reed").contains(order.number()).doesNotContain("{");
        letters.byHand(BookingKey.fresh(), draft.withWords("My own subject", "My own words"));
        assertThat(letters.of(order.id())).singleElement().satisfies(letter -> {
            assertThat(letter.body()).isEqualTo("My own words");
            assertThat(letter.by()).isEqualTo("Robin");
            assertThat(letter.mail()).isEmpty();
        });
        assertThat(orders.history(order.id()))
                .anyMatch(line -> line.what().key().equals("letters.history.by-hand"));
    }

    @Test
    void a_private_link_is_in_the_letter_and_not_in_what_is_kept() {
        Order order = confirmed();
        String link = "https://puzzles.example/p/abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQ";
        Draft draft = letters.draft(order.id(), LetterKind.PROOF_READY, Map.of(LetterField.LINK, link));
        assertThat(draft.body()).contains(link);
        letters.byHand(BookingKey.fresh(), draft);
        assertThat(letters.of(order.id()).getFirst().body())
                .contains("https://puzzles.example/p/…")
                .doesNotContain("abcdefgh");
    }

    @Test
    void the_owners_wording_is_used_from_its_saving_on_and_a_wrong_one_is_not_kept() {
        Order order = confirmed();
        wordings.save(new Wording(LetterKind.THANK_YOU, "Thanks {customer}", "Thanks for {pieces} pieces."));
        assertThat(letters.draft(order.id(), LetterKind.THANK_YOU, Map.of()).body())
                .isEqualTo("Thanks for 48 pieces.");
        assertThatThrownBy(() -> wordings.save(new Wording(LetterKind.THANK_YOU, "x", "{nonsense}")))
                .isInstanceOf(Refused.class);
        assertThat(wordings.of(LetterKind.THANK_YOU).subject()).isEqualTo("Thanks {customer}");
        wordings.reset(LetterKind.THANK_YOU);
        assertThat(wordings.of(LetterKind.THANK_YOU)).isEqualTo(wordings.standard(LetterKind.THANK_YOU));
    }

    @Test
    void what_planning_tells_is_worded_here_and_kept_here() {
        Order order = confirmed();
        wordings.save(new Wording(LetterKind.NEW_DAY, "Later", "On {new_day} instead of {promised}."));
        LocalDate later = order.promised().orElseThrow().plusDays(3);
        Notices.Notice notice = notices.about(order, Optional.empty(), Optional.of(later));
        assertThat(notice.body()).startsWith("On ").contains(" instead of ");
        notices.told(order, Optional.empty(), notice, "Robin");
        assertThat(orders.get(order.id()).promised()).contains(later);
        assertThat(letters.of(order.id())).singleElement().satisfies(letter -> {
            assertThat(letter.kind()).isEqualTo(LetterKind.NEW_DAY);
            assertThat(letter.body()).isEqualTo(notice.body());
        });
    }

    @Test
    void an_invoice_goes_out_with_its_paper_once() throws MessagingException {
        server.start();
        Order order = confirmed();
        invoices.issue(BookingKey.fresh(), order.id(), "Robin");
        accounts.save(account(server.getSmtp().getPort(), ""), "");
        Draft draft = letters.draft(order.id(), LetterKind.INVOICE, Map.of());
        assertThat(draft.papers()).hasSize(1);
        BookingKey key = BookingKey.fresh();
        long letter = letters.send(key, draft);
        assertThat(letters.send(key, draft)).isEqualTo(letter);
        assertThat(server.waitForIncomingEmail(20_000, 1)).isTrue();
        until(() -> letters.of(order.id()).getFirst().mail().orElseThrow().state() == MailState.SENT);
        var got = server.getReceivedMessages();
        assertThat(got).hasSize(1);
        assertThat(got[0].getMessageID())
                .isEqualTo(
                        letters.of(order.id()).getFirst().mail().orElseThrow().messageId());
        assertThat(jdbc.sql("select message is null from letter_outbox")
                        .query(Boolean.class)
                        .single())
                .as("the message is not kept once it has gone")
                .isTrue();
    }

    /** The server is away at first: the letter waits, is shown as waiting, and goes when it is back. */
    @Test
    void a_server_that_is_away_delays_a_letter_and_loses_none() {
        server.start();
        int port = server.getSmtp().getPort();
        server.stop();
        Order order = confirmed();
        accounts.save(account(port, ""), "");
        letters.send(BookingKey.fresh(), letters.draft(order.id(), LetterKind.ON_TIME, Map.of()));
        until(() -> letters.withFaults().size() == 1);
        Letter.Mail mail = letters.withFaults().getFirst().mail().orElseThrow();
        assertThat(mail.state()).isEqualTo(MailState.WAITING);
        assertThat(mail.fault()).isNotBlank();
        GreenMail back = new GreenMail(new ServerSetup(port, "localhost", "smtp"));
        back.start();
        try {
            beans.getBean(MailDesk.class).again(letters.withFaults().getFirst().id(), MailState.WAITING);
            assertThat(back.waitForIncomingEmail(20_000, 1)).isTrue();
            until(() -> letters.withFaults().isEmpty());
        } finally {
            back.stop();
        }
    }

    @Test
    void a_letter_that_nobody_tries_to_send_is_shown_after_a_while() {
        server.start();
        Order order = confirmed();
        accounts.save(account(server.getSmtp().getPort(), ""), "");
        // as when sending is turned off between the letter's commit and its first try
        jdbc.sql("update letter_settings set sending = false").update();
        jdbc.sql("""
            insert into letter (order_id, kind, way, recipient, subject, body, attached, made_at, made_on, made_by)
            values (:order, 'ON_TIME', 'MAIL', 'ada@reed.example', 'x', 'x', '', now(), current_date, 'Robin')
            """).param("order", order.id().value()).update();
        jdbc.sql("""
            insert into letter_outbox (letter_id, message_id, message, state, next_try)
            select id, '<1@puzzles.example>', ''::bytea, 'WAITING', now() from letter
            """).update();
        assertThat(letters.withFaults()).as("a moment ago").isEmpty();
        TestClock.set(Instant.now().plus(Duration.ofMinutes(11)));
        assertThat(letters.withFaults())
                .singleElement()
                .satisfies(letter ->
                        assertThat(letter.mail().orElseThrow().tries()).isZero());
        assertThat(beans.getBean(MailDesk.class).sends()).isFalse();
    }

    @Test
    void without_a_server_or_an_address_nothing_goes_into_the_outbox() {
        Order order = confirmed();
        Draft draft = letters.draft(order.id(), LetterKind.ON_TIME, Map.of());
        assertThatThrownBy(() -> letters.send(BookingKey.fresh(), draft))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("letters.send.off");
        jdbc.sql("update customer set contact = '0155 01 7734'").update();
        Draft nowhere = letters.draft(order.id(), LetterKind.ON_TIME, Map.of());
        assertThatThrownBy(() -> letters.send(BookingKey.fresh(), nowhere))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("letters.send.no-address");
        assertThat(letters.of(order.id())).isEmpty();
    }

    @Test
    void the_password_is_kept_encrypted_and_goes_to_no_other_server() {
        accounts.save(account(2525, "mara"), "horse-battery");
        assertThat(accounts.account().hasPassword()).isTrue();
        assertThat(jdbc.sql("select encode(password, 'escape') from letter_settings")
                        .query(String.class)
                        .single())
                .doesNotContain("horse");
        accounts.save(account(2526, "mara"), "");
        assertThat(accounts.account().hasPassword())
                .as("the same server and user")
                .isTrue();
        assertThatThrownBy(() -> accounts.save(account(2526, "someone"), ""))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("letters.account.password");
        assertThat(accounts.account().user())
                .as("a refused change changes nothing")
                .isEqualTo("mara");
    }

    @Test
    void reminders_are_due_step_by_step_and_stop_when_it_is_paid() {
        Order order = confirmed();
        var invoice = invoices.issue(BookingKey.fresh(), order.id(), "Robin");
        TestClock.set(day(invoice.dueOn().plusDays(3)));
        assertThat(reminders.overdue()).singleElement().satisfies(one -> {
            assertThat(one.next().orElseThrow().kind()).isEqualTo(LetterKind.FIRST_REMINDER);
            assertThat(one.isDue(workshop.today())).isFalse();
        });
        for (LetterKind kind :
                List.of(LetterKind.FIRST_REMINDER, LetterKind.SECOND_REMINDER, LetterKind.LAST_REMINDER)) {
            var due = reminders.overdue().getFirst().next().orElseThrow();
            assertThat(due.kind()).isEqualTo(kind);
            TestClock.set(day(due.from()));
            assertThat(reminders.overdue().getFirst().isDue(workshop.today())).isTrue();
            Draft draft = letters.draft(order.id(), kind, Map.of());
            assertThat(draft.body()).contains(invoice.number());
            assertThat(draft.missing()).doesNotContain(LetterField.OPEN, LetterField.DUE);
            letters.byHand(BookingKey.fresh(), draft);
        }
        assertThat(reminders.overdue().getFirst().next()).isEmpty();
        receipts.receive(
                BookingKey.fresh(), order.id(), invoice.gross(), Payment.Way.TRANSFER, workshop.today(), "", "Robin");
        assertThat(reminders.overdue()).isEmpty();
    }

    @Test
    void letters_that_tell_money_are_the_owners() {
        Order order = confirmed();
        invoices.issue(BookingKey.fresh(), order.id(), "Robin");
        AsPerson.maker("Mel");
        assertThat(letters.fitting(order.id())).noneMatch(LetterKind::tellsMoney);
        assertThatThrownBy(() -> letters.draft(order.id(), LetterKind.INVOICE, Map.of()))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> wordings.reset(LetterKind.INVOICE)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> accounts.save(account(25, ""), "")).isInstanceOf(Refused.class);
        assertThat(reminders.overdue()).isEmpty();
    }

    private Instant day(LocalDate day) {
        return day.atTime(12, 0).atZone(workshop.zone()).toInstant();
    }

    private static void until(BooleanSupplier come) {
        Instant end = Instant.now().plus(Duration.ofSeconds(30));
        while (!come.getAsBoolean()) {
            assertThat(Instant.now()).isBefore(end);
            try {
                Thread.sleep(20);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }
}
