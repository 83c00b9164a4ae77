package puzzleworkshop.walks;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.MethodOrderer.OrderAnnotation;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import puzzleworkshop.delivery.PackedOrders;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelState;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.proofs.Proofs;
import puzzleworkshop.workshop.Stage;

/** With a phone from packed to delivered, by post and by collection, and one that comes back. */
@DisplayNameGeneration(ReplaceUnderscores.class)
@TestMethodOrder(OrderAnnotation.class)
class DeliveryWalk extends Walk {

    @Override
    Whose workshop() {
        return Whose.SHARED;
    }

    private static final String ADA = "Ada Reed";
    private static final String BO = "Bo Lind";
    private static final int MANY = 23;

    private puzzleworkshop.orders.Order post;
    private puzzleworkshop.orders.Order collected;

    @Override
    Look usual() {
        return Look.PHONE;
    }

    @Test
    @Order(1)
    void twenty_five_packed_orders_stand_on_one_page() {
        openWorkshop(false);
        PackedOrders packed = new PackedOrders(beans());
        post = packed.one(ADA, "Parcel");
        collected = packed.one(BO, "Collection");
        for (int i = 0; i < MANY; i++) {
            packed.one("Customer " + (i + 1), i % 3 == 0 ? "Collection" : "Parcel");
        }
        go("hand-overs");
        assertThat(page.locator(".delivery-card").count()).isEqualTo(MANY + 2);
        shoot("hand-overs");
    }

    @Test
    @Order(2)
    void the_address_is_looked_through_and_the_parcel_sent_with_its_number() {
        go("orders/" + post.number());
        button("Check the address").click();
        page.locator("vaadin-combo-box")
                .filter(new Locator.FilterOptions().setHasText("Country"))
                .locator("input")
                .fill("Germany");
        page.keyboard().press("Enter");
        settle();
        page.getByLabel("Street and number").fill("Quay Street 4");
        page.getByLabel("Postal code").fill("2410");
        page.getByLabel("Town").fill("Northhaven");
        page.locator("vaadin-dialog vaadin-button, vaadin-dialog-overlay vaadin-button")
                .filter(new Locator.FilterOptions().setHasText("Save"))
                .click();
        page.getByText("is no postal code of that country").first().waitFor();
        page.getByLabel("Postal code").fill("24103");
        page.locator("vaadin-dialog vaadin-button, vaadin-dialog-overlay vaadin-button")
                .filter(new Locator.FilterOptions().setHasText("Save"))
                .click();
        page.getByText("24103 Northhaven").first().waitFor();
        shoot("parcel-panel");
        go("hand-overs");
        Locator card = card(ADA);
        card.locator("vaadin-text-field input").fill("00 340 434 123456");
        settle();
        card.locator("vaadin-button")
                .filter(new Locator.FilterOptions().setHasText("Sent"))
                .click();
        page.waitForCondition(() -> state(post).equals(Optional.of(ParcelState.SENT)));
        assertThat(letter()).contains("00340434123456");
        shoot("hand-over-letter");
        button("I have sent it").click();
        page.locator("vaadin-dialog[opened]").waitFor(gone());
        assertThat(bean(Parcels.class).everOf(post.id()).getLast().tracking()).isEqualTo("00340434123456");
        assertThat(bean(Orders.class).get(post.id()).state()).isEqualTo(OrderState.HANDED_OVER);
    }

    @Test
    @Order(3)
    void the_customer_sees_it_on_its_way_and_says_that_it_has_arrived_and_that_all_is_well() {
        String link = "p/" + bean(Proofs.class).makeLink(post.id(), NAME).text();
        go(link);
        page.getByText("On its way since").waitFor();
        page.getByText("Tracking number 00340434123456").waitFor();
        button("It has arrived").click();
        page.getByText("Is all well with it?").waitFor();
        assertThat(state(post)).contains(ParcelState.DELIVERED);
        shoot("customer-delivered");
        button("All is well").click();
        page.getByText("You told us that all is well").waitFor();
    }

    @Test
    @Order(4)
    void what_is_collected_is_made_ready_and_given_out() {
        go("hand-overs");
        press(BO, "Ready to collect");
        page.waitForCondition(() -> state(collected).equals(Optional.of(ParcelState.READY)));
        button("Close").click();
        page.locator("vaadin-dialog[opened]").waitFor(gone());
        press(BO, "Remind the customer");
        assertThat(letter()).contains("waits for you since");
        button("I have sent it").click();
        card(BO).getByText("Reminded").waitFor();
        press(BO, "Collected");
        page.waitForCondition(() -> state(collected).equals(Optional.of(ParcelState.COLLECTED)));
        page.waitForCondition(() -> card(BO).count() == 0);
    }

    @Test
    @Order(5)
    void one_comes_back_and_is_made_again_at_the_workshops_cost() {
        String link = "p/" + bean(Proofs.class).makeLink(collected.id(), NAME).text();
        go(link);
        page.getByLabel("If something is wrong, tell us here").fill("One corner is charred.");
        button("Tell the workshop").click();
        page.getByText("Thank you, we have it.").waitFor();
        go("");
        page.getByText("Complaint about " + collected.number()).waitFor();
        shoot("week-complaint");
        go("orders/" + collected.number());
        button("Decide").first().click();
        page.getByLabel("Postage that the workshop bears").fill("9.40");
        page.getByLabel("Answer to the customer").fill("We make it again.");
        shoot("complaint-decide");
        page.locator("vaadin-dialog vaadin-button, vaadin-dialog-overlay vaadin-button")
                .filter(new Locator.FilterOptions().setHasText("Decide"))
                .click();
        page.waitForCondition(
                () -> bean(Orders.class).get(collected.id()).next().equals(java.util.Optional.of(Stage.PRINT)));
        shoot("complaint-decided");
    }

    @Test
    @Order(6)
    void what_is_set_once_stands_in_set_up_and_what_came_back_on_figures() {
        go("set-up/sending-limits-and-prices");
        page.locator("h2").getByText("Sending: limits and prices").waitFor();
        shoot("delivery-set-up");
        go("figures");
        page.getByText("What complaints have in common").waitFor();
        shoot("complaints-figures");
        assertThat(complaints()).isEmpty();
    }

    private Locator card(String customer) {
        return page.locator(".delivery-card", new Page.LocatorOptions().setHasText(customer));
    }

    private String letter() {
        Locator words = page.locator("vaadin-text-area textarea");
        words.waitFor();
        return words.inputValue();
    }

    private static Locator.WaitForOptions gone() {
        return new Locator.WaitForOptions().setState(WaitForSelectorState.DETACHED);
    }

    private void press(String customer, String words) {
        card(customer)
                .locator("vaadin-button")
                .filter(new Locator.FilterOptions().setHasText(words))
                .click();
        settle();
    }

    /** None while it is in no parcel yet. */
    private Optional<ParcelState> state(puzzleworkshop.orders.Order order) {
        return bean(Parcels.class).everOf(order.id()).stream()
                .map(Parcel::state)
                .reduce((before, last) -> last);
    }
}
