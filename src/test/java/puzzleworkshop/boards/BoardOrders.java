package puzzleworkshop.boards;

import java.util.Arrays;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.PlainOrders;

/** Orders with blanks on sheets, as the tests of this room need them; nothing is held yet. */
final class BoardOrders {

    static final Size BLANK = Size.mm(222, 172);

    private final JdbcClient jdbc;
    private final SheetRack rack;

    BoardOrders(JdbcClient jdbc, SheetRack rack) {
        this.jdbc = jdbc;
        this.rack = rack;
    }

    SheetId sheet(double width, double height) {
        return rack.add(
                Outline.rectangle(Size.mm(width, height)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("6.00", "EUR"),
                "Robin");
    }

    /** Confirmed, its print being next, one blank on each sheet at its corner. */
    OrderId confirmed(SheetId... sheets) {
        OrderId order = quote(sheets);
        jdbc.sql("""
                update customer_order set state = 'CONFIRMED', confirmed_at = now(), next_stage = 'PRINT',
                    promised_on = '2027-01-01' where id = :order
                """).param("order", order.value()).update();
        return order;
    }

    OrderId quote(SheetId... sheets) {
        OrderRef order = PlainOrders.add(jdbc, 1).getFirst();
        Arrays.stream(sheets)
                .forEach(sheet -> jdbc.sql("""
                        insert into order_blank
                            (order_id, position, across, down, width_mm, height_mm, x_mm, y_mm, degrees, sheet_id)
                        select :order, coalesce(max(position), 0) + 1, 1, 1, 222, 172, 0, 0, 0, :sheet
                        from order_blank where order_id = :order
                        """)
                        .param("order", order.id().value())
                        .param("sheet", sheet.value())
                        .update());
        return order.id();
    }
}
