package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import puzzleworkshop.insights.work.Topic;

/** On a phone, in the demo workshop with its year: a reminder that is due, a mail server set up, a letter sent, the figures. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class LettersWalk extends Walk {

    @Override
    Look usual() {
        return Look.PHONE;
    }

    @Test
    @Order(1)
    void this_week_tells_which_reminder_is_due_and_it_is_written_and_kept() {
        Instant before = Instant.now();
        openWorkshop(true);
        System.getLogger("walk")
                .log(System.Logger.Level.INFO, "opened in {0}", Duration.between(before, Instant.now()));
        go("");
        page.getByText("payment reminder is due").waitFor();
        shoot("letters-week");
        page.locator(".letters-week a").first().click();
        button("Write a letter").click();
        settle();
        assertThat(page.locator(".letters-dialog vaadin-text-area textarea").inputValue())
                .contains("perhaps it was overlooked");
        page.getByText("As the customer sees it").click();
        page.locator("iframe.letters-page").waitFor();
        settle();
        shoot("letters-dialog");
        button("I have sent it").click();
        page.getByText("First payment reminder").first().waitFor();
        page.getByText("sent by hand").waitFor();
        shoot("letters-order");
        go("");
        settle();
        assertThat(page.getByText("payment reminder is due").count()).isZero();
    }

    @Test
    @Order(2)
    void the_owner_words_a_letter_sets_a_mail_server_up_and_sends_it() throws Exception {
        GreenMail server = new GreenMail(new ServerSetup(0, "localhost", "smtp"));
        server.start();
        try {
            go("set-up/letters");
            settle();
            shoot("letters-set-up");
            page.getByText("Letters can be sent by the program").click();
            page.getByLabel("Mail server (SMTP)").fill("localhost");
            page.getByLabel("Port").fill(String.valueOf(server.getSmtp().getPort()));
            page.locator("vaadin-select:has-text('STARTTLS')").click();
            page.getByText("None, only on this computer").last().click();
            page.getByLabel("Sender's address").fill("post@birchandbeam.example");
            button("Save").last().click();
            page.getByText("Saved").first().waitFor();
            button("Try the connection").click();
            page.getByText("The mail server answers").waitFor();
            go("orders");
            page.getByText("Ida Norrby").first().click();
            button("Write a letter").click();
            settle();
            button("Send").click();
            assertThat(server.waitForIncomingEmail(20_000, 1)).isTrue();
            page.reload();
            settle();
            page.getByText("Sent", new com.microsoft.playwright.Page.GetByTextOptions().setExact(true))
                    .first()
                    .waitFor();
            shoot("letters-sent");
            assertThat(server.getReceivedMessages()).hasSize(1);
        } finally {
            server.stop();
        }
    }

    @Test
    @Order(3)
    void each_figure_of_the_work_has_its_plot_its_table_and_the_orders_behind_it() {
        go("figures/work");
        settle();
        for (Topic topic : Topic.values()) {
            String words = bean(puzzleworkshop.display.Formatter.class).text(topic.textKey());
            page.locator("vaadin-select").first().click();
            page.locator("vaadin-select-item")
                    .getByText(words, new com.microsoft.playwright.Locator.GetByTextOptions().setExact(true))
                    .last()
                    .click();
            page.locator("h2")
                    .getByText(words, new com.microsoft.playwright.Locator.GetByTextOptions().setExact(true))
                    .waitFor();
            settle();
            assertThat(page.locator(".insights-plot svg").count()).isOne();
            shoot("figures-" + topic.name().toLowerCase(java.util.Locale.ROOT));
            if (topic != Topic.STOCK) {
                page.locator(".insights-open").first().click();
                page.locator(".insights-behind a").first().waitFor();
                button("Close").click();
                settle();
            }
        }
        assertThat(complaints()).isEmpty();
    }
}
