package puzzleworkshop.offers.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.datepicker.DatePicker;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.router.QueryParameters;
import java.util.Map;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.orders.Customer;
import puzzleworkshop.orders.Customers;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.CustomerView;
import puzzleworkshop.planning.WeekPlan;
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

    @Test
    void a_customers_page_shows_their_orders_and_keeps_a_note() {
        navigate(CustomerView.class, past.customer().id());
        TextArea note = find(TextArea.class).all().stream()
                .filter(area -> area.getLabel().equals("What to remember"))
                .findFirst()
                .orElseThrow();
        test(note).setValue("Likes hares");
        test(find(com.vaadin.flow.component.button.Button.class)
                        .withText("Save")
                        .single())
                .click();
        assertThat(customers.note(past.customer().id())).isEqualTo("Likes hares");
        assertThat(customers.find(past.customer().id()).orElseThrow()).isEqualTo(past.customer());
    }
}
