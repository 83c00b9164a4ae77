package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.delivery.HandOvers.Entry;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;

/** Where a parcel goes: the address that was looked through, else the lines typed with the order and a word that nobody has. */
final class WhereTo extends Div {

    WhereTo(Entry entry, Formatter figures) {
        addClassName("delivery-where");
        if (entry.to().isPresent()) {
            add(new Span(
                    String.join(", ", entry.to().get().lines(entry.to().get().country()))));
            return;
        }
        add(new Verdict(Verdict.Kind.WARN, figures.text("delivery.address.unchecked")));
        String typed = typed(entry.first().customer().address());
        if (!typed.isEmpty()) {
            add(new Span(typed));
        }
    }

    /** In one line. */
    static String typed(String lines) {
        return String.join(
                ", ",
                lines.lines().map(String::strip).filter(line -> !line.isEmpty()).toList());
    }
}
