package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.delivery.HandOvers.Entry;
import puzzleworkshop.delivery.labels.CustomsUnion;
import puzzleworkshop.delivery.sending.Reach;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Sentence;

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

    /** What is to be known beside an address that stands there already; the whole where none was looked through. */
    static List<Markup> besideAddress(Entry entry, Formatter figures) {
        return entry.to().isPresent() ? customs(entry, figures) : List.of(of(entry, figures));
    }

    private static List<Markup> customs(Entry entry, Formatter figures) {
        return entry
                .to()
                .filter(to -> CustomsUnion.isLeft(entry.home(), to))
                .map(to -> Verdict.of(Verdict.Kind.WARN, figures.text("delivery.customs")))
                .stream()
                .toList();
    }

    /** A parcel that is still here and whose way does not go where it is sent. */
    private static Optional<Sentence> notThere(Entry entry) {
        return entry.to()
                .filter(to -> entry.state().isHere())
                .flatMap(to -> entry.way().notTo(new Reach.Destination(to.country(), entry.home())));
    }

    private static List<Markup> lines(Entry entry, Formatter figures) {
        if (entry.to().isPresent()) {
            List<Markup> there = new ArrayList<>();
            there.add(Markup.span(String.join(", ", entry.to().get().lines(entry.home()))));
            notThere(entry)
                    .map(why -> Verdict.of(Verdict.Kind.WARN, figures.say(why)))
                    .ifPresent(there::add);
            there.addAll(customs(entry, figures));
            return there;
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
