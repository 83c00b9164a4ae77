package puzzleworkshop.papers;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;

/** Who owes what: orders that are confirmed or done and not paid, or paid too much. */
@Service
public class Debts {

    /**
     * One order with money open.
     *
     * @param open above zero when the customer owes, below when the workshop does
     * @param dueOn of the invoice; empty before there is one
     */
    public record Debt(
            OrderId order, String number, String customer, Money due, Money received, Optional<LocalDate> dueOn) {

        public Money open() {
            return due.minus(received);
        }

        public boolean isOverdue(LocalDate today) {
            return open().isPositive() && dueOn.map(day -> day.isBefore(today)).orElse(false);
        }
    }

    private static final String ASKED = """
        select order_id, number, customer, currency, due, received, due_on from order_money where due <> received\
        """;
    private static final String FIRST_DUE = " order by due_on nulls last, due - received desc";

    private final JdbcClient jdbc;

    Debts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Overdue ones first, then by amount. */
    @Transactional(readOnly = true)
    public List<Debt> open() {
        return jdbc.sql(ASKED + FIRST_DUE).query(Debts::debt).list();
    }

    /** Those of some orders only, for who looks at a few: no other order is read. */
    @Transactional(readOnly = true)
    public List<Debt> openOf(Collection<OrderId> orders) {
        if (orders.isEmpty()) {
            return List.of();
        }
        return jdbc.sql(ASKED + " and order_id = any (:orders)" + FIRST_DUE)
                .param("orders", orders.stream().map(OrderId::value).toArray(Long[]::new))
                .query(Debts::debt)
                .list();
    }

    private static Debt debt(ResultSet row, int n) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("currency"));
        return new Debt(
                new OrderId(row.getLong("order_id")),
                row.getString("number"),
                row.getString("customer"),
                money(row.getBigDecimal("due"), currency),
                money(row.getBigDecimal("received"), currency),
                Optional.ofNullable(row.getObject("due_on", LocalDate.class)));
    }

    private static Money money(BigDecimal amount, Currency currency) {
        return Money.of(amount, currency).rounded();
    }
}
