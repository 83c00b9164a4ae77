package puzzleworkshop.placing.ui;

import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.geometry.align.FoundStretch;
import puzzleworkshop.measure.Length;
import puzzleworkshop.placing.PlacingRules;
import puzzleworkshop.placing.Position;

/** The verdict on a place, in words that say what it stands on. */
final class PlaceWords {

    private PlaceWords() {}

    /** Turn and stretch; of a stretch that the marks could not tell from none it says how much they could. */
    static String lies(Position position, PlacingRules rules, Formatter figures) {
        String turn = figures.number(Math.toDegrees(position.place().turn()), 2);
        return position.stretch(rules)
                .map(found -> found.told()
                        ? figures.text(
                                "placing.lies.stretched",
                                turn,
                                percent(found.share(), figures),
                                percent(found.within(), figures))
                        : figures.text("placing.lies.as-drawn", turn, percent(found.within(), figures)))
                .orElseGet(() -> figures.text("placing.lies", turn));
    }

    static boolean tellStretch(Position position, PlacingRules rules) {
        return position.stretch(rules).filter(FoundStretch::told).isPresent();
    }

    private static String percent(double share, Formatter figures) {
        return figures.number(100 * share, 2);
    }

    static Verdict verdict(Length spare, Length uncertainty, boolean jig, Formatter figures) {
        if (spare.mm() < 0) {
            return new Verdict(Verdict.Kind.BAD, figures.text("placing.verdict.outside", spare.times(-1), uncertainty));
        }
        return new Verdict(
                Verdict.Kind.GOOD,
                figures.text(jig ? "placing.verdict.jig" : "placing.verdict.inside", spare, uncertainty));
    }
}
