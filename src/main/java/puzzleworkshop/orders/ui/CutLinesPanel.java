package puzzleworkshop.orders.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.Optional;
import puzzleworkshop.cutfiles.ui.CutFileLinks;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Tray;
import puzzleworkshop.pattern.judged.StickingCheck;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.pattern.ui.StickingVerdict;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** The cut lines of an order on its page: their length, whether the cut stays inside the print, and the files to cut from. */
@org.springframework.stereotype.Component
class CutLinesPanel implements OrderPanel {

    private final PatternCache shelf;
    private final Workshop workshop;
    private final Formatter figures;
    private final OrderCutFiles cutFiles;

    CutLinesPanel(PatternCache shelf, Workshop workshop, Formatter figures, OrderCutFiles cutFiles) {
        this.cutFiles = cutFiles;
        this.shelf = shelf;
        this.workshop = workshop;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 45;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        PageSection section = new PageSection(figures.text("orders.cut-lines"));
        try {
            CutPattern pattern = shelf.of(order.puzzle().pattern());
            TradeNumbers numbers = workshop.tradeNumbers();
            CutPlan.Sequence sequence =
                    numbers.outlineLast() ? CutPlan.Sequence.INNER_FIRST : CutPlan.Sequence.OUTLINE_FIRST;
            section.add(new Paragraph(figures.text(
                    "orders.cut-lines.length",
                    Length.mm(pattern.totalLengthMm()),
                    Long.toString(pattern.spec().seed()))));
            section.add(new StickingVerdict(
                    StickingCheck.of(
                            pattern.outline(),
                            pattern.spec().size(),
                            numbers.overhang(),
                            numbers.stickShift(),
                            numbers.stickTurnDegrees()),
                    pattern.outline(),
                    pattern.spec().size(),
                    figures));
            section.add(files("orders.cut-lines.puzzle", cutFiles.of(order)));
            if (order.puzzle().tray()) {
                Tray tray = Tray.of(pattern.spec());
                section.add(
                        files(
                                "orders.cut-lines.frame",
                                new CutFileLinks(order.number() + "-frame", () -> tray.frame(sequence))),
                        files(
                                "orders.cut-lines.backing",
                                new CutFileLinks(order.number() + "-backing", tray::backing)));
            }
        } catch (Refused refused) {
            section.add(new Paragraph(figures.say(refused)));
        }
        return Optional.of(section);
    }

    private Component files(String label, Component links) {
        Span name = new Span(figures.text(label));
        name.addClassName("pw-soft");
        Div row = new Div(name, links);
        row.addClassName("pw-apart");
        return row;
    }
}
