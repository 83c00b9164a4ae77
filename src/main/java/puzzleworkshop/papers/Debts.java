package puzzleworkshop.papers;

import java.math.BigDecimal;
import java.sql.Types;
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

    private final JdbcClient jdbc;

    Debts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Overdue ones first, then by amount. */
    @Transactional(readOnly = true)
    public List<Debt> open() {
        return read(Optional.empty());
    }

    /** Those of some orders only, for who looks at a few: no other order is read. */
    @Transactional(readOnly = true)
    public List<Debt> openOf(Collection<OrderId> orders) {
        return orders.isEmpty() ? List.of() : read(Optional.of(orders));
    }

    /** Papers and payments are added up once for all orders: looked up for each of thousands, it took a fifth of a second. */
    private List<Debt> read(Optional<Collection<OrderId>> orders) {
        return jdbc.sql("""
            with billed as (
                select order_id, sum(case series when 'INVOICE' then gross else -gross end) as due,
                       max(due_on) filter (where series = 'INVOICE') as due_on
                  from invoice where cast(:orders as bigint[]) is null or order_id = any (:orders) group by order_id),
            paid as (
                select order_id,
                       sum(case when kind in ('REFUND', 'RECEIPT_TAKEN_BACK') then -amount else amount end) as received
                  from order_payment where cast(:orders as bigint[]) is null or order_id = any (:orders) group by order_id),
            money as (
                select o.id as order_id, o.number, c.name as customer, o.currency, coalesce(p.received, 0) as received,
                       coalesce(b.due, case when o.state = 'CANCELLED' then 0 else o.price_gross end) as due, b.due_on
                  from customer_order o
                  join customer c on c.id = o.customer_id
                  left join billed b on b.order_id = o.id
                  left join paid p on p.order_id = o.id
                 where o.state <> 'QUOTE' and (cast(:orders as bigint[]) is null or o.id = any (:orders)))
            select * from money where due <> received order by due_on nulls last, due - received desc
            """)
                .param(
                        "orders",
                        orders.map(some -> some.stream().map(OrderId::value).toArray(Long[]::new))
                                .orElse(null),
                        Types.ARRAY)
                .query((row, n) -> {
                    Currency currency = Currency.getInstance(row.getString("currency"));
                    return new Debt(
                            new OrderId(row.getLong("order_id")),
                            row.getString("number"),
                            row.getString("customer"),
                            money(row.getBigDecimal("due"), currency),
                            money(row.getBigDecimal("received"), currency),
                            Optional.ofNullable(row.getObject("due_on", LocalDate.class)));
                })
                .list();
    }

    private static Money money(BigDecimal amount, Currency currency) {
        return Money.of(amount, currency).rounded();
    }
}
