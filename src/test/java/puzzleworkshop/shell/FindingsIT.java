package puzzleworkshop.shell;

import static org.assertj.core.api.Assertions.assertThat;

import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.orders.Customers;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.shell.Findings.Found;
import puzzleworkshop.shell.Findings.Kind;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class FindingsIT {

    @Autowired
    Findings findings;

    @Autowired
    Customers customers;

    @Autowired
    WeekPlan plan;

    @Autowired
    BeanFactory beans;

    @Autowired
    DataSource database;

    private Order order;

    @BeforeEach
    void one_order_of_one_customer() {
        CleanDatabase.now(database);
        order = new BenchOrders(beans).confirmed("Ida 100%_Lind", plan.today().plusDays(20), 25);
        customers.keepNote(order.customer().id(), "Rings the bell twice; likes hares");
    }

    @Test
    void an_order_is_found_by_its_number_its_customer_and_what_is_remembered_of_them() {
        assertThat(findings.of(order.number()).getFirst())
                .isEqualTo(new Found(Kind.ORDER, "orders/" + order.number(), order.number(), "Ida 100%_Lind"));
        assertThat(findings.of("  lind  HARES "))
                .extracting(Found::kind)
                .as("words in any sequence, order before customer")
                .containsExactly(Kind.ORDER, Kind.CUSTOMER);
        assertThat(findings.of("ida hedgehogs")).as("every word must be there").isEmpty();
    }

    @Test
    void a_sheet_is_found_by_its_number_under_either_name() {
        Found sheet = findings.of("sheet").stream()
                .filter(found -> found.kind() == Kind.SHEET)
                .findFirst()
                .orElseThrow();
        assertThat(findings.of("Board " + sheet.title())).contains(sheet);
        assertThat(sheet.address()).isEqualTo("sheets/number/" + sheet.title());
    }

    @Test
    void signs_with_a_meaning_in_patterns_are_only_signs() {
        assertThat(findings.of("100%_l")).isNotEmpty();
        assertThat(findings.of("%")).as("a per cent sign that was typed").hasSize(2);
        assertThat(findings.of("1%0")).isEmpty();
        assertThat(findings.of("\\")).isEmpty();
        assertThat(findings.of("' or 1=1 --")).isEmpty();
        assertThat(findings.of("\0")).isEmpty();
        assertThat(findings.of("x".repeat(5000))).isEmpty();
        assertThat(findings.of(" ")).isEmpty();
    }
}
