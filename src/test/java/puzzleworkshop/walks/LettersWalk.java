package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.delivery.PackedOrders;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.letters.LetterKind;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.papers.Invoice;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.runtime.HouseClock;

/** With a phone: word that a parcel is on its way, and a reminder of an invoice that was to be paid weeks ago. */
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class LettersWalk extends Walk {

    private static final Duration LONG_AGO = Duration.ofDays(45);

    private puzzleworkshop.orders.Order sent;
    private Invoice invoice;

    @Override
    Look usual() {
        return Look.PHONE;
    }

    @Test
    @Order(1)
    void the_customer_of_a_parcel_is_told_that_it_is_on_its_way_with_its_number() {
        openWorkshop(false);
        sent = new PackedOrders(beans()).one("Ada Reed", "Parcel");
        var parcel = bean(Parcels.class).pack(List.of(sent.id()), NAME);
        bean(Parcels.class).tracked(parcel.id(), "00340434123456", NAME);
        bean(ParcelJourney.class).send(BookingKey.fresh(), parcel.id(), Optional.empty(), NAME, "");
        HouseClock.at(
                Instant.now().minus(LONG_AGO),
                () -> invoice = bean(Invoices.class).issue(BookingKey.fresh(), sent.id(), NAME));
        go("orders/" + sent.number());
        write("On its way");
        assertThat(words()).contains("00340434123456").contains(sent.number());
        page.getByText("As the customer sees it").click();
        settle();
        shoot("letter-on-its-way");
        button("I have sent it").click();
        page.waitForCondition(() -> kept(LetterKind.ON_ITS_WAY));
    }

    @Test
    @Order(2)
    void this_week_says_who_has_not_paid_and_the_reminder_is_written_from_the_order() {
        go("");
        Locator due = page.locator(".letters-week a").filter(new Locator.FilterOptions().setHasText(sent.number()));
        due.waitFor();
        shoot("week-reminder");
        due.click();
        settle();
        button("Write a letter").click();
        settle();
        assertThat(words())
                .as("the reminder that is due is proposed")
                .contains(invoice.number())
                .contains("perhaps it was overlooked");
        shoot("letter-reminder");
        button("I have sent it").click();
        page.waitForCondition(() -> kept(LetterKind.FIRST_REMINDER));
        go("");
        assertThat(page.locator(".letters-week a").count()).isZero();
        assertThat(complaints()).isEmpty();
    }

    private void write(String kind) {
        button("Write a letter").click();
        settle();
        page.locator("vaadin-dialog vaadin-select, vaadin-dialog-overlay vaadin-select")
                .click();
        page.locator("vaadin-select-item")
                .filter(new Locator.FilterOptions().setHasText(kind))
                .first()
                .click();
        settle();
    }

    /** What the letter says now. */
    private String words() {
        return page.locator("vaadin-dialog vaadin-text-area textarea, vaadin-dialog-overlay vaadin-text-area textarea")
                .first()
                .inputValue();
    }

    private boolean kept(LetterKind kind) {
        // asked of the database: letters that tell amounts are shown to a signed-in owner only, and whoever tests is
        // nobody
        return bean(JdbcClient.class)
                .sql("select exists (select 1 from letter where order_id = :order and kind = :kind)")
                .param("order", sent.id().value())
                .param("kind", kind.name())
                .query(Boolean.class)
                .single();
    }
}
