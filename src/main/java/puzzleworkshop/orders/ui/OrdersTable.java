package puzzleworkshop.orders.ui;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.CsvCell;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.Orders;

/** Orders as a table for other programs: CSV (RFC 4180), days as ISO 8601, lengths in millimetres, one line an order. */
@Service
class OrdersTable {

    private static final int AT_A_TIME = 500;

    private static final List<String> COLUMNS = List.of(
            "number",
            "customer",
            "contact",
            "state",
            "next",
            "quantity",
            "width_mm",
            "height_mm",
            "pieces",
            "board",
            "wanted_by",
            "promised",
            "confirmed",
            "handed_over",
            "note");

    private final Orders orders;
    private final Formatter figures;

    OrdersTable(Orders orders, Formatter figures) {
        this.orders = orders;
        this.figures = figures;
    }

    /**
     * Those of the filter, in its sequence.
     *
     * @param withMoney also price and currency, for whoever may see them
     */
    @Transactional(readOnly = true)
    String csv(OrderFilter filter, boolean withMoney) {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord(withMoney ? and(COLUMNS, "price", "currency") : COLUMNS);
            int offset = 0;
            for (List<Order> some = orders.list(filter, offset, AT_A_TIME);
                    !some.isEmpty();
                    some = orders.list(filter, offset, AT_A_TIME)) {
                for (Order order : some) {
                    printer.printRecord(line(order, withMoney));
                }
                offset += some.size();
            }
        } catch (IOException never) {
            throw new UncheckedIOException(never);
        }
        return text.toString();
    }

    private List<String> line(Order order, boolean withMoney) {
        List<String> line = List.of(
                order.number(),
                CsvCell.guarded(order.customer().name()),
                CsvCell.guarded(order.customer().contact()),
                figures.text(order.state().textKey()),
                order.next().map(stage -> figures.text(stage.textKey())).orElse(""),
                String.valueOf(order.quantity()),
                String.valueOf(order.puzzle().finished().width().mm()),
                String.valueOf(order.puzzle().finished().height().mm()),
                String.valueOf(order.puzzle().pieces()),
                CsvCell.guarded(order.board().material()),
                order.wantedBy().map(String::valueOf).orElse(""),
                order.promised().map(String::valueOf).orElse(""),
                order.confirmedAt().map(String::valueOf).orElse(""),
                order.handedOverAt().map(String::valueOf).orElse(""),
                CsvCell.guarded(order.note()));
        return withMoney
                ? and(
                        line,
                        order.price().gross().rounded().amount().toPlainString(),
                        order.price().gross().currency().getCurrencyCode())
                : line;
    }

    private static List<String> and(List<String> line, String... more) {
        return Stream.concat(line.stream(), Stream.of(more)).toList();
    }
}
