package puzzleworkshop.delivery.ui;

import puzzleworkshop.delivery.HandOvers.Entry;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Money;

/** Whether something is still to be paid; how much only where the amount is told. */
final class ToPay extends Still {

    ToPay(Entry entry, Formatter figures) {
        super(of(entry, figures));
    }

    /** The same within what only stands there. */
    static Markup of(Entry entry, Formatter figures) {
        return Verdict.of(entry.unpaid() ? Verdict.Kind.WARN : Verdict.Kind.GOOD, words(entry, figures));
    }

    private static String words(Entry entry, Formatter figures) {
        if (!entry.unpaid()) {
            return figures.text("delivery.paid");
        }
        return entry.open()
                .filter(Money::isPositive)
                .map(open -> figures.text("delivery.to-pay", open))
                .orElseGet(() -> figures.text("delivery.to-pay.untold"));
    }
}
