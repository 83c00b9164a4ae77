package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.printing.Copy;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintItem;
import puzzleworkshop.printing.media.PrintMedium;

/** Pictures that wait for the printer, one row an order, earliest due first. */
class WaitingList extends Div {

    private final transient Formatter figures;

    WaitingList(Formatter figures) {
        this.figures = figures;
    }

    /**
     * @param on what is to be printed on, null when nothing is chosen
     * @param media all there are
     * @param heldBack orders that join no run by themselves, and why
     */
    void show(List<Copy> copies, PrintMedium on, List<PrintMedium> media, Map<OrderId, Sentence> heldBack) {
        removeAll();
        if (copies.isEmpty()) {
            Div empty = new Div(
                    new H3(getTranslation("printing.waiting-none")),
                    new Paragraph(getTranslation("printing.waiting-none-next")));
            empty.addClassName("pw-empty");
            add(empty);
            return;
        }
        Map<OrderId, List<Copy>> byOrder = new LinkedHashMap<>();
        copies.forEach(copy -> byOrder.computeIfAbsent(copy.item().order().id(), order -> new ArrayList<>())
                .add(copy));
        add(new Still(Markup.of(
                "ul",
                "printing-waiting",
                byOrder.values().stream()
                        .map(of -> Markup.of(
                                "li",
                                "",
                                row(
                                        of,
                                        on,
                                        media,
                                        Optional.ofNullable(heldBack.get(
                                                of.getFirst().item().order().id())))))
                        .toList())));
    }

    private Markup row(List<Copy> copies, PrintMedium on, List<PrintMedium> media, Optional<Sentence> heldBack) {
        PrintItem item = copies.getFirst().item();
        List<Markup> row = new ArrayList<>();
        row.add(Markup.of("img", "")
                .with("src", GangRuns.stickerAddress(item.order().id(), item.look()))
                .with("alt", "")
                .with("loading", "lazy"));
        row.add(Markup.div(
                "printing-waiting-words",
                Markup.span(item.order().number()).with("style", "font-weight: 600"),
                Markup.span(
                        "pw-small",
                        copies.size() > 1
                                ? figures.text("printing.times", copies.size(), item.finished())
                                : figures.size(item.finished()))));
        row.add(Markup.span(
                "pw-small",
                item.due().map(day -> figures.text("printing.due", day)).orElse(getTranslation("printing.no-date"))));
        if (on != null && !on.takes(item.sticker())) {
            row.add(tooLarge(item, on, media));
        }
        heldBack.ifPresent(why -> row.add(Markup.div(
                "printing-too-large",
                Verdict.of(
                        Verdict.Kind.WAIT,
                        figures.text("printing.held-back", item.order().number(), figures.say(why))))));
        return Markup.div("printing-waiting-row", row);
    }

    /** Said before anything is planned: what it would fit on, or that nothing here takes it. */
    private Markup tooLarge(PrintItem item, PrintMedium on, List<PrintMedium> media) {
        List<String> takers = media.stream()
                .filter(medium -> medium.takes(item.sticker()))
                .map(PrintMedium::name)
                .toList();
        return Markup.div(
                "printing-too-large",
                Verdict.of(Verdict.Kind.WARN, figures.text("printing.too-large", on.name())),
                Markup.span(
                        "pw-small",
                        takers.isEmpty()
                                ? figures.text("printing.too-large.nowhere", item.sticker())
                                : figures.text("printing.too-large.fits", String.join(", ", takers))));
    }
}
