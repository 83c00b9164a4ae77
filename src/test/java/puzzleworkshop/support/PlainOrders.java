package puzzleworkshop.support;

import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;

/** Puts plain orders into the database, for tests of lower rooms that only need an order to refer to. */
public final class PlainOrders {

    private PlainOrders() {}

    /** Quotes with chosen ids. */
    public static void withIds(DataSource database, long... ids) {
        JdbcClient jdbc = JdbcClient.create(database);
        long customer = customer(jdbc, "Ada Reed");
        for (long id : ids) {
            insert(jdbc, customer, id, "2026-" + (9000 + id));
        }
    }

    /** So many quotes, with the next ids. */
    public static List<OrderRef> add(JdbcClient jdbc, int count) {
        long customer = customer(jdbc, "Ida Norrby");
        List<OrderRef> orders = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            long id = jdbc.sql("select nextval(pg_get_serial_sequence('customer_order', 'id'))")
                    .query(Long.class)
                    .single();
            String number = "P-" + id;
            insert(jdbc, customer, id, number);
            orders.add(new OrderRef(new OrderId(id), number));
        }
        return orders;
    }

    private static long customer(JdbcClient jdbc, String name) {
        return jdbc.sql("insert into customer (name) values (:name) returning id")
                .param("name", name)
                .query(Long.class)
                .single();
    }

    private static void insert(JdbcClient jdbc, long customer, long id, String number) {
        jdbc.sql("""
                insert into customer_order (id, number, customer_id, state, quantity, width_mm, height_mm, piece_columns,
                    piece_rows, pattern_seed, cut_style, outline_kind, outline_measure_mm, kerf_mm, intended_age, tray,
                    board_material, board_grade, board_thickness_mm, rush, laser_minutes, price_net, price_vat,
                    price_gross, cost, currency, kept_price, valid_until, created_at, created_by)
                overriding system value
                values (:id, :number, :customer, 'QUOTE', 1, 300, 200, 8, 6, 1, 'KNOBS', 'SQUARE', 0, 0.2, 'FROM_6', false,
                    'birch-ply', 'CRAFT', 3, false, 20, 50, 0, 50, 30, 'EUR', '{}', current_date, now(), 'mara')
                """)
                .param("id", id)
                .param("number", number)
                .param("customer", customer)
                .update();
    }
}
