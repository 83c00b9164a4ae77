package puzzleworkshop.placing.ui;

import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Length;

/** The verdict on a place, in words that say what it stands on. */
final class PlaceWords {

    private PlaceWords() {}

    static Verdict verdict(Length spare, Length uncertainty, boolean jig, Formatter figures) {
        if (spare.mm() < 0) {
            return new Verdict(Verdict.Kind.BAD, figures.text("placing.verdict.outside", spare.times(-1), uncertainty));
        }
        return new Verdict(
                Verdict.Kind.GOOD,
                figures.text(jig ? "placing.verdict.jig" : "placing.verdict.inside", spare, uncertainty));
    }
}
