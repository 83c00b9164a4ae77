package puzzleworkshop.support;

import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Puts plain orders with chosen ids into the database, for tests of lower rooms that only need an order to refer to. */
public final class PlainOrders {

    private PlainOrders() {}

    public static void withIds(DataSource database, long... ids) {
        JdbcClient jdbc = JdbcClient.create(database);
        long customer = jdbc.sql("insert into customer (name) values ('Ada Reed') returning id")
                .query(Long.class)
                .single();
        for (long id : ids) {
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
                    .param("number", "2026-" + (9000 + id))
                    .param("customer", customer)
                    .update();
        }
    }
}
