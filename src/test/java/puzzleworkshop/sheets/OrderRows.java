package puzzleworkshop.sheets;

import org.springframework.jdbc.core.simple.JdbcClient;

/** Bare orders in the database, for tests of this lower room: it knows an order by its number in the books only. */
final class OrderRows {

    private OrderRows() {}

    /** The id of the first of so many new orders; the others follow it. */
    static long add(JdbcClient jdbc, int count) {
        long customer = jdbc.sql("insert into customer (name) values ('Ida Norrby') returning id")
                .query(Long.class)
                .single();
        long first = 0;
        for (int i = 0; i < count; i++) {
            long id =
                    jdbc.sql("""
                    insert into customer_order (number, customer_id, state, quantity, width_mm, height_mm, piece_columns,
                        piece_rows, pattern_seed, cut_style, outline_kind, outline_measure_mm, kerf_mm, intended_age, tray,
                        board_material, board_grade, board_thickness_mm, rush, laser_minutes, price_net, price_vat,
                        price_gross, cost, currency, kept_price, valid_until, created_at, created_by)
                    values (gen_random_uuid()::text, :customer, 'QUOTE', 1, 297, 210, 4, 3, 1, 'KNOBS', 'SQUARE', 0, 0.2,
                        'FROM_6', false, 'birch-ply', 'CRAFT', 3, false, 10, 20, 0, 20, 5, 'EUR', '{}', '2027-01-01',
                        now(), 'Robin')
                    returning id
                    """).param("customer", customer).query(Long.class).single();
            first = i == 0 ? id : first;
        }
        return first;
    }
}
