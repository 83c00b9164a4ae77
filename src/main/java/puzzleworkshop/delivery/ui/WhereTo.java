package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.delivery.HandOvers.Entry;
import puzzleworkshop.delivery.address.PostalAddress;
import puzzleworkshop.delivery.labels.CustomsUnion;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;

/** Where a parcel goes: the address that was looked through, else the lines typed with the order and a word that nobody has. */
@StyleSheet("context://delivery.css")
final class WhereTo extends Still {

    WhereTo(Entry entry, Formatter figures) {
        super(of(entry, figures));
    }

    /** The same within what only stands there. */
    static Markup of(Entry entry, Formatter figures) {
        return Markup.div("delivery-where", lines(entry, figures));
    }

    private static List<Markup> lines(Entry entry, Formatter figures) {
        if (entry.to().isPresent()) {
            PostalAddress to = entry.to().get();
            Markup there = Markup.span(String.join(", ", to.lines(entry.home())));
            return CustomsUnion.isLeft(entry.home(), to)
                    ? List.of(there, Verdict.of(Verdict.Kind.WARN, figures.text("delivery.customs")))
                    : List.of(there);
        }
        List<Markup> lines = new ArrayList<>();
        lines.add(Verdict.of(Verdict.Kind.WARN, figures.text("delivery.address.unchecked")));
        String typed = typed(entry.first().customer().address());
        if (!typed.isEmpty()) {
            lines.add(Markup.span(typed));
        }
        return lines;
    }

    /** In one line. */
    static String typed(String lines) {
        return String.join(
                ", ",
                lines.lines().map(String::strip).filter(line -> !line.isEmpty()).toList());
    }
}
