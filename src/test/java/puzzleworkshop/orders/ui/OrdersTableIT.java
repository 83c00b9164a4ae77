package puzzleworkshop.orders.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.sql.DataSource;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class OrdersTableIT {

    @Autowired
    OrdersTable table;

    @Autowired
    Orders orders;

    @Autowired
    WeekPlan plan;

    @Autowired
    BeanFactory beans;

    @Autowired
    DataSource database;

    private Order late;
    private Order soon;
    private Order far;

    @BeforeEach
    void three_orders() {
        CleanDatabase.now(database);
        BenchOrders make = new BenchOrders(beans);
        LocalDate today = plan.today();
        far = make.confirmed("Cecil Moor", today.plusDays(30), 25);
        late = make.confirmed("=HYPERLINK(\"x\")", today.plusDays(1), 25);
        soon = make.confirmed("Bo Reed", today.plusDays(5), 25);
    }

    private List<Long> listed(OrderFilter.Due due, OrderFilter.Sequence sequence) {
        return orders.list(new OrderFilter("", Set.of(), Optional.empty(), due, sequence), 0, 10).stream()
                .map(order -> order.id().value())
                .toList();
    }

    @Test
    void orders_are_told_apart_by_their_day_and_put_in_sequence() {
        assertThat(listed(OrderFilter.Due.ANY, OrderFilter.Sequence.BY_DAY))
                .containsExactly(late.id().value(), soon.id().value(), far.id().value());
        assertThat(listed(OrderFilter.Due.ANY, OrderFilter.Sequence.NEWEST))
                .containsExactly(soon.id().value(), late.id().value(), far.id().value());
        assertThat(listed(OrderFilter.Due.ANY, OrderFilter.Sequence.BY_CUSTOMER).getFirst())
                .isEqualTo(late.id().value());
        assertThat(listed(OrderFilter.Due.SEVEN_DAYS, OrderFilter.Sequence.BY_DAY))
                .containsExactly(late.id().value(), soon.id().value());
        assertThat(listed(OrderFilter.Due.NEXT_SEVEN_DAYS, OrderFilter.Sequence.BY_DAY))
                .isEmpty();
        assertThat(listed(OrderFilter.Due.PAST, OrderFilter.Sequence.BY_DAY)).isEmpty();
        assertThat(listed(OrderFilter.Due.NO_DAY, OrderFilter.Sequence.BY_DAY)).isEmpty();
    }

    @Test
    void the_table_has_one_line_an_order_no_formula_and_money_only_for_whoever_may_see_it() throws IOException {
        OrderFilter all =
                new OrderFilter("", Set.of(), Optional.empty(), OrderFilter.Due.ANY, OrderFilter.Sequence.BY_DAY);
        List<CSVRecord> lines = read(table.csv(all, true));
        assertThat(lines).hasSize(4);
        assertThat(lines.get(1).get(0)).isEqualTo(late.number());
        assertThat(lines.get(1).get(1)).isEqualTo("'=HYPERLINK(\"x\")");
        assertThat(lines.get(1).toList())
                .as("to the minor unit, as it is paid")
                .contains(late.price().gross().rounded().amount().toPlainString());
        List<CSVRecord> plain = read(table.csv(all, false));
        assertThat(plain.getFirst().toList()).doesNotContain("price", "currency");
        assertThat(plain.get(1).toList())
                .doesNotContain(late.price().gross().rounded().amount().toPlainString());
    }

    private static List<CSVRecord> read(String csv) throws IOException {
        try (CSVParser parser = CSVParser.parse(csv, CSVFormat.RFC4180)) {
            return parser.getRecords();
        }
    }
}
