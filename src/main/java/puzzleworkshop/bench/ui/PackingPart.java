package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Optional;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.CountByWeight;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Length;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternCache;
import puzzleworkshop.pattern.smallparts.SmallParts;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;
import puzzleworkshop.sheets.Material;
import puzzleworkshop.sheets.RackSettings;
import puzzleworkshop.workshop.Stage;

/** At packing: what a whole set weighs, honestly, and which warning the box needs. */
@org.springframework.stereotype.Component
class PackingPart implements StagePart {

    private final PatternCache patterns;
    private final RackSettings boards;
    private final Formatter figures;

    PackingPart(PatternCache patterns, RackSettings boards, Formatter figures) {
        this.patterns = patterns;
        this.boards = boards;
        this.figures = figures;
    }

    @Override
    public Stage stage() {
        return Stage.PACK;
    }

    @Override
    public Optional<Component> show(Waiting waiting, Runnable again) {
        Order order = waiting.order();
        CutPattern pattern = patterns.of(order.puzzle().pattern());
        Div part = new Div(new H3(figures.text("bench.count")));
        part.addClassName("pw-stack");
        boards.materials().stream()
                .filter(material -> material.id().equals(order.board().material()))
                .findFirst()
                .map(material -> count(order, pattern, material))
                .ifPresent(part::add);
        SmallPartsVerdict verdict = SmallParts.judge(pattern, order.puzzle().age());
        part.add(new H3(figures.text("bench.box")), new Paragraph(figures.say(verdict.headline())));
        verdict.boxText().ifPresent(text -> {
            Paragraph box = new Paragraph(figures.say(text));
            box.addClassName("bench-box-text");
            part.add(box);
        });
        verdict.notes().forEach(note -> {
            Paragraph small = new Paragraph(figures.say(note));
            small.addClassName("pw-small");
            part.add(small);
        });
        return Optional.of(part);
    }

    private Component count(Order order, CutPattern pattern, Material material) {
        CountByWeight count = CountByWeight.of(
                order.puzzle().finished().area(),
                Length.mm(pattern.innerLengthMm()),
                order.puzzle().pattern().kerf(),
                order.board().thickness(),
                material.densityKgM3(),
                order.puzzle().pieces());
        return new Paragraph(figures.text(
                count.showsOneMissing() ? "bench.count.shows" : "bench.count.hides",
                figures.number(count.grams(), 0),
                figures.number(count.scatterGrams(), 0),
                figures.number(count.gramsAPiece(), 1),
                order.puzzle().pieces(),
                count.fewestThatShow()));
    }
}
