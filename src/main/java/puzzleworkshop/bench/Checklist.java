package puzzleworkshop.bench;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.workshop.Stage;

/**
 * What to look at in a stage, in the order of the hands. Common practice of the trade in our own words; where work can
 * hurt it defers to the maker's manual, local rules and qualified people.
 */
public final class Checklist {

    /**
     * One line of it.
     *
     * @param textKey what to look at
     * @param caution true where neglect hurts people or starts a fire
     */
    public record Line(String textKey, boolean caution) {}

    private static final List<Line> AT_COLLECTION = made(Stage.HAND_OVER, "whose", "look", "given");
    private static final Map<Stage, List<Line>> LINES = new EnumMap<>(Stage.class);

    static {
        lines(Stage.PRINT, "scale", "colours", "dry-ink");
        lines(Stage.LAMINATE, "no-pvc!", "dust", "slowly", "rest");
        lines(Stage.SHEET_PREP, "dry-history!", "flat!", "saw!", "size", "dust", "dry");
        lines(Stage.STICK, "no-glue!", "mark", "one-edge", "bubbles", "corners");
        lines(Stage.MASK, "whole", "pale", "press", "no-pvc!");
        lines(Stage.CUT, "manual!", "eyewear!", "extraction!", "extinguisher!", "alone!", "hold-down", "gap", "trace");
        lines(Stage.FINISH, "hot!", "unmask", "edges", "count", "picture");
        lines(Stage.PACK, "count", "warning!", "bag", "label");
        lines(Stage.HAND_OVER, "address", "receipt", "told");
    }

    private Checklist() {}

    private static void lines(Stage stage, String... names) {
        LINES.put(stage, made(stage, names));
    }

    private static List<Line> made(Stage stage, String... names) {
        List<Line> lines = new ArrayList<>();
        for (String name : names) {
            boolean caution = name.endsWith("!");
            lines.add(new Line(
                    "bench.check." + stage.name() + "." + (caution ? name.substring(0, name.length() - 1) : name),
                    caution));
        }
        return List.copyOf(lines);
    }

    public static List<Line> of(Stage stage) {
        return LINES.get(stage);
    }

    /** At hand-over where the customer comes for it: nothing is addressed, and nothing is on its way. */
    public static List<Line> atCollection() {
        return AT_COLLECTION;
    }
}
