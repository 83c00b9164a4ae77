package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Optional;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.BlankScale;
import puzzleworkshop.bench.CountByWeight;
import puzzleworkshop.bench.CountByWeight.Weighed;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.preview.PuzzleDifficulty;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PieceSizes;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.pattern.smallparts.SmallParts;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

/** At packing: what a whole set weighs, honestly, and which warning the box needs. */
@org.springframework.stereotype.Component
class PackingPart implements StagePart {

    private final PatternCache patterns;
    private final PuzzleDifficulty difficulty;
    private final RackSettings boards;
    private final Formatter figures;
    private final BlankScale scale;
    private final Workshop workshop;

    PackingPart(
            PatternCache patterns,
            PuzzleDifficulty difficulty,
            RackSettings boards,
            Formatter figures,
            BlankScale scale,
            Workshop workshop) {
        this.difficulty = difficulty;
        this.scale = scale;
        this.workshop = workshop;
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
        part.add(new Paragraph(figures.text(
                "bench.box.hard",
                order.puzzle().pieces(),
                figures.text(difficulty.of(order).textKey()))));
        verdict.notes().forEach(note -> {
            SmallText small = new SmallText(figures.say(note));
            part.add(small);
        });
        return Optional.of(part);
    }

    private Component count(Order order, CutPattern pattern, Material material) {
        TradeNumbers numbers = workshop.tradeNumbers();
        Size finished = order.puzzle().finished();
        Optional<Weighed> weighed = scale.lastFor(order.id())
                .map(reading -> new Weighed(
                        reading.grams(),
                        reading.stepGrams(),
                        reading.blank().orElseGet(() -> numbers.blankFor(finished)),
                        numbers.stickerFor(finished)));
        CountByWeight count =
                CountByWeight.of(PieceSizes.of(pattern), order.board().thickness(), material.densityKgM3(), weighed);
        Paragraph said = new Paragraph(figures.text(
                count.showsOneMissing() ? "bench.count.shows" : "bench.count.hides",
                figures.number(count.grams(), weighed.isPresent() ? 1 : 0),
                figures.number(count.scatterGrams(), weighed.isPresent() ? 1 : 0),
                figures.number(count.lightestGrams(), 2),
                count.pieces(),
                count.fewestThatShow()));
        SmallText from = new SmallText(weighed.map(blank -> figures.text(
                        "bench.count.from-blank", figures.number(blank.grams(), 1), figures.size(blank.blank())))
                .orElseGet(() -> figures.text("bench.count.from-handbook")));
        return new Div(said, from);
    }
}
