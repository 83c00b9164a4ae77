package puzzleworkshop.papers;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.InvoiceLines.Said;
import puzzleworkshop.pricing.PriceAnswer;

/** The lines in which a price is said on paper: the puzzles, the discount, the shipping. */
final class PriceLines {

    private PriceLines() {}

    static List<Said> of(Order order, PriceAnswer price, Formatter figures) {
        List<Said> lines = new ArrayList<>();
        String what = figures.text(
                "papers.line.puzzle", order.puzzle().finished(), order.puzzle().pieces());
        if (order.puzzle().tray()) {
            what = figures.text("papers.line.with-tray", what);
        }
        if (order.rush()) {
            what = figures.text("papers.line.rush", what);
        }
        lines.add(new Said(what, BigDecimal.valueOf(order.quantity()), price.unitPrice(), price.puzzlesVat()));
        if (price.discount().isPositive()) {
            Percent share = Percent.share(price.discount(), price.goods());
            lines.add(new Said(
                    figures.text("papers.line.discount", share),
                    BigDecimal.ONE,
                    price.discount().negated(),
                    price.puzzlesVat()));
        }
        if (!price.shipping().isZero()) {
            lines.add(new Said(
                    figures.text("papers.line.shipping"), BigDecimal.ONE, price.shipping(), price.shippingVat()));
        }
        return lines;
    }
}
