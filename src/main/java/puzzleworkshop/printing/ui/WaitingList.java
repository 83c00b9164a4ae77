package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
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
        UnorderedList list = new UnorderedList();
        list.addClassName("printing-waiting");
        byOrder.values()
                .forEach(of -> list.add(new ListItem(row(
                        of,
                        on,
                        media,
                        Optional.ofNullable(
                                heldBack.get(of.getFirst().item().order().id()))))));
        add(list);
    }

    private Component row(List<Copy> copies, PrintMedium on, List<PrintMedium> media, Optional<Sentence> heldBack) {
        PrintItem item = copies.getFirst().item();
        Image picture = new Image(GangRuns.stickerAddress(item.order().id(), item.look()), "");
        picture.getElement().setAttribute("loading", "lazy");
        Span number = new Span(item.order().number());
        number.getElement().getStyle().set("font-weight", "600");
        Span size = new Span(
                copies.size() > 1
                        ? figures.text("printing.times", copies.size(), item.finished())
                        : figures.size(item.finished()));
        size.addClassName("pw-small");
        Div words = new Div(number, size);
        words.addClassName("printing-waiting-words");
        Span due = new Span(
                item.due().map(day -> figures.text("printing.due", day)).orElse(getTranslation("printing.no-date")));
        due.addClassName("pw-small");
        Div row = new Div(picture, words, due);
        row.addClassName("printing-waiting-row");
        if (on != null && !on.takes(item.sticker())) {
            row.add(tooLarge(item, on, media));
        }
        heldBack.ifPresent(why -> {
            Div note = new Div(new Verdict(
                    Verdict.Kind.WAIT,
                    figures.text("printing.held-back", item.order().number(), figures.say(why))));
            note.addClassName("printing-too-large");
            row.add(note);
        });
        return row;
    }

    /** Said before anything is planned: what it would fit on, or that nothing here takes it. */
    private Component tooLarge(PrintItem item, PrintMedium on, List<PrintMedium> media) {
        List<String> takers = media.stream()
                .filter(medium -> medium.takes(item.sticker()))
                .map(PrintMedium::name)
                .toList();
        Verdict verdict = new Verdict(Verdict.Kind.WARN, figures.text("printing.too-large", on.name()));
        Span way = new Span(
                takers.isEmpty()
                        ? figures.text("printing.too-large.nowhere", item.sticker())
                        : figures.text("printing.too-large.fits", String.join(", ", takers)));
        way.addClassName("pw-small");
        Div note = new Div(verdict, way);
        note.addClassName("printing-too-large");
        return note;
    }
}
