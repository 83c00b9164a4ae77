package puzzleworkshop.cutting.ui.settings;

import puzzleworkshop.cutting.trials.TestCard;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;

/** The card as it will lie under the head: birch, squares to cut, numbers to engrave. */
final class TestCardDrawing {

    private final TestCard card;
    private final Formatter figures;

    TestCardDrawing(TestCard card, Formatter figures) {
        this.card = card;
        this.figures = figures;
    }

    Svg svg() {
        double w = card.size().width().mm();
        double h = card.size().height().mm();
        Svg svg = Svg.of(
                        0,
                        0,
                        w,
                        h,
                        figures.text("cutting.card"),
                        figures.text(
                                "cutting.card.words",
                                card.speeds().size(),
                                card.powers().size(),
                                card.speeds().getFirst(),
                                card.speeds().getLast()))
                .rect(0.2, 0.2, w - 0.4, h - 0.4, "cutting-card-wood");
        card.labels().forEach(path -> svg.path(path.svgPathData(), "cutting-card-label"));
        card.squares().forEach(square -> svg.path(card.path(square).svgPathData(), "cutting-card-square"));
        return svg;
    }
}
