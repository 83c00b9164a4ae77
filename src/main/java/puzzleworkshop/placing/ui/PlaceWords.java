package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.html.Div;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.geometry.align.FoundStretch;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.placing.LearnedPlaces;
import puzzleworkshop.placing.PlacingRules;
import puzzleworkshop.placing.Position;

/** The verdict on a place, in words that say what it stands on. */
final class PlaceWords {

    /** As a share: what no size shows. */
    private static final double SEEN = 5e-5;

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

    /** A cut follows the marks as they lie, also where they are too near to say that the print is stretched. */
    static String finished(Position position, PlacingRules rules) {
        if (!position.followed() || Math.abs(position.place().stretch() - 1) <= SEEN) {
            return "placing.finished";
        }
        return tellStretch(position, rules) ? "placing.finished.followed" : "placing.finished.marks";
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

    /** What the general tolerance says while nothing is measured. */
    static Div byEye(LearnedPlaces.ByEye eye, Machine machine, Formatter figures) {
        boolean inside = eye.spare().mm() >= 0;
        SmallText why = new SmallText(figures.text(
                eye.learnedFrom() > 0 ? "placing.eye.learned" : "placing.eye.practice",
                eye.check().shift(),
                figures.number(eye.check().turnDegrees(), 2),
                machine.name(),
                eye.learnedFrom()));
        Div words = new Div(
                inside
                        ? new Verdict(Verdict.Kind.GOOD, figures.text("placing.eye.inside", eye.spare()))
                        : new Verdict(
                                Verdict.Kind.WARN,
                                figures.text("placing.eye.outside", eye.spare().times(-1))),
                why);
        words.addClassNames("placing-eye", "pw-stack");
        return words;
    }
}
