package puzzleworkshop.payments;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;

/** Payments and what is waited for. */
@Repository
class PaymentStore {

    private final JdbcClient jdbc;

    PaymentStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void add(Payment payment, Instant now) {
        jdbc.sql("""
                insert into order_payment (order_id, kind, way, amount, currency, paid_on, note, who, at, takes_back)
                values (:order, :kind, :way, :amount, :currency, :paidOn, :note, :who, :now, :takesBack)
                """)
                .param(
                        "takesBack",
                        payment.takesBack().isPresent() ? payment.takesBack().getAsLong() : null)
                .param("order", payment.order().value())
                .param("kind", payment.kind().name())
                .param("way", payment.way().name())
                .param("amount", payment.amount().amount())
                .param("currency", payment.amount().currency().getCurrencyCode())
                .param("paidOn", payment.paidOn())
                .param("note", payment.note())
                .param("who", payment.who())
                .param("now", now.atOffset(ZoneOffset.UTC))
                .update();
    }

    List<Payment> of(OrderId order) {
        return jdbc.sql("select * from order_payment where order_id = :order order by paid_on, id")
                .param("order", order.value())
                .query((row, n) -> payment(row))
                .list();
    }

    List<Payment> between(LocalDate from, LocalDate to) {
        return jdbc.sql("select * from order_payment where paid_on between :from and :to order by paid_on, id")
                .param("from", from)
                .param("to", to)
                .query((row, n) -> payment(row))
                .list();
    }

    /** What came for the orders less what was given back; those for which nothing came are left out. */
    Map<OrderId, Money> received(Collection<OrderId> orders) {
        Map<OrderId, Money> received = new HashMap<>();
        jdbc.sql("""
                select order_id, currency, sum(case when kind in ('REFUND', 'RECEIPT_TAKEN_BACK') then -amount else amount end)
                    as received
                from order_payment where order_id = any (:orders) group by order_id, currency
                """)
                .param("orders", orders.stream().map(OrderId::value).toArray(Long[]::new))
                .query((row, n) -> received.put(new OrderId(row.getLong("order_id")), money(row, "received")))
                .list();
        return received;
    }

    void ask(PaymentsAwaited.Asked asked) {
        jdbc.sql("""
                insert into payment_awaited (order_id, amount, currency, asked_at, asked_by)
                values (:order, :amount, :currency, :at, :who)
                on conflict (order_id) do update set amount = excluded.amount, currency = excluded.currency,
                    asked_at = excluded.asked_at, asked_by = excluded.asked_by
                """)
                .param("order", asked.order().value())
                .param("amount", asked.amount().amount())
                .param("currency", asked.amount().currency().getCurrencyCode())
                .param("at", asked.at().atOffset(ZoneOffset.UTC))
                .param("who", asked.who())
                .update();
    }

    boolean letGo(OrderId order) {
        return jdbc.sql("delete from payment_awaited where order_id = :order")
                        .param("order", order.value())
                        .update()
                == 1;
    }

    List<PaymentsAwaited.Asked> asked() {
        return jdbc.sql("select * from payment_awaited order by order_id")
                .query((row, n) -> asked(row))
                .list();
    }

    Optional<PaymentsAwaited.Asked> asked(OrderId order) {
        return jdbc.sql("select * from payment_awaited where order_id = :order")
                .param("order", order.value())
                .query((row, n) -> asked(row))
                .optional();
    }

    private static PaymentsAwaited.Asked asked(ResultSet row) throws SQLException {
        return new PaymentsAwaited.Asked(
                new OrderId(row.getLong("order_id")),
                Money.of(row.getBigDecimal("amount"), Currency.getInstance(row.getString("currency"))),
                row.getTimestamp("asked_at").toInstant(),
                row.getString("asked_by"));
    }

    private static Payment payment(ResultSet row) throws SQLException {
        long takesBack = row.getLong("takes_back");
        OptionalLong undone = row.wasNull() ? OptionalLong.empty() : OptionalLong.of(takesBack);
        return new Payment(
                row.getLong("id"),
                new OrderId(row.getLong("order_id")),
                Payment.Kind.valueOf(row.getString("kind")),
                Payment.Way.valueOf(row.getString("way")),
                money(row, "amount"),
                row.getObject("paid_on", LocalDate.class),
                row.getString("note"),
                row.getString("who"),
                undone);
    }

    private static Money money(ResultSet row, String column) throws SQLException {
        return Money.of(row.getBigDecimal(column), Currency.getInstance(row.getString("currency")))
                .rounded();
    }
}
