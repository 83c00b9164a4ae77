package puzzleworkshop.offers.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.datepicker.DatePicker;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.router.QueryParameters;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.pixels.MarkedSpot;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Customers;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.CustomerView;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.proofs.CustomerDesk;
import puzzleworkshop.proofs.CustomerWish;
import puzzleworkshop.proofs.MarkedPlace;
import puzzleworkshop.proofs.Proofs;
import puzzleworkshop.proofs.Token;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class OrderAgainTest extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    WeekPlan plan;

    @Autowired
    Customers customers;

    @Autowired
    DataSource database;

    @Autowired
    Proofs proofs;

    @Autowired
    CustomerDesk desk;

    @Autowired
    Pictures pictures;

    private Order past;

    @BeforeEach
    void an_order() {
        CleanDatabase.now(database);
        past = new BenchOrders(beans).confirmed("Ida Lund", plan.today().plusDays(20), 25);
    }

    @Test
    void the_same_puzzle_for_the_same_customer_begins_without_a_day() {
        UI.getCurrent().navigate("orders/new", QueryParameters.simple(Map.of("again", past.number())));
        assertThat(find(ComboBox.class).withId("customer").single().getValue())
                .isInstanceOfSatisfying(
                        Customer.class, who -> assertThat(who.name()).isEqualTo("Ida Lund"));
        assertThat(find(LengthField.class).all().stream().map(LengthField::getValue))
                .contains(
                        past.puzzle().finished().width(),
                        past.puzzle().finished().height());
        assertThat(find(IntegerField.class).all().stream().map(IntegerField::getValue))
                .contains(past.quantity());
        assertThat(find(DatePicker.class).withId("wanted-by").single().getValue())
                .isNull();
    }

    /** A face that lines go around, another whose edge is cut, and a child of three years. */
    @Test
    void what_a_customer_marked_and_asked_for_is_taken_over_with_one_tap() {
        Order waiting = new BenchOrders(beans)
                .waitingForApproval("Mia Holm", plan.today().plusDays(20), 20);
        Token token = proofs.makeLink(waiting.id(), "Robin");
        List<MarkedPlace> marked = List.of(
                new MarkedPlace(new MarkedSpot(0.3, 0.4, 0.05), false),
                new MarkedPlace(new MarkedSpot(0.7, 0.6, 0.06), true));
        desk.wish(token, "203.0.113.77", new CustomerWish("", marked, Optional.of(3)));
        UI.getCurrent().navigate(NewOrderView.class, waiting.number());
        test(find(Button.class).withText("Take over").single()).click();

        PuzzleForm.Form form = find(PuzzleForm.class).single().read().orElseThrow();
        assertThat(form.puzzle().layout().keptWhole()).singleElement().satisfies(place -> {
            FramedPicture framed = waiting.picture().orElseThrow();
            Picture picture = pictures.get(framed.picture());
            assertThat(place).isEqualTo(marked.getFirst().on(form.puzzle().finished(), framed.crop(), picture));
        });
        assertThat(form.puzzle().shapes()).hasSize(1);
        assertThat(form.puzzle().style()).isEqualTo(CutStyle.STRAIGHT);
        assertThat(form.puzzle().age()).isEqualTo(IntendedAge.FROM_3);
        assertThat(form.puzzle().pieces())
                .isLessThanOrEqualTo(12)
                .isLessThan(waiting.puzzle().pieces());

        proofs.settle(waiting, proofs.wishes(waiting.id()).getFirst(), "Robin");
        UI.getCurrent().navigate(NewOrderView.class, waiting.number());
        assertThat(find(Button.class).withText("Take over").all()).isEmpty();
    }

    @Test
    void a_customers_page_shows_their_orders_and_keeps_a_note() {
        navigate(CustomerView.class, past.customer().id());
        TextArea note = find(TextArea.class).all().stream()
                .filter(area -> area.getLabel().equals("What to remember"))
                .findFirst()
                .orElseThrow();
        test(note).setValue("Likes hares");
        test(find(Button.class).withText("Save").single()).click();
        assertThat(customers.note(past.customer().id())).isEqualTo("Likes hares");
        assertThat(customers.find(past.customer().id()).orElseThrow()).isEqualTo(past.customer());
    }
}
