package puzzleworkshop.placing;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.InsidePrint;
import puzzleworkshop.geometry.align.MarkReading;
import puzzleworkshop.geometry.align.SimilarityFit;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;

/**
 * What the visited marks of a print say: where it lies, and whether the cut then stays inside it.
 *
 * @param visits in the order of the reading's residuals
 * @param reading where the print lies, or what is wrong with the readings
 * @param proof whether outline and kerf lie inside the print; none while the readings are not believed
 * @param followed whether the cut is stretched as the print is
 */
public record Measuring(List<MarkVisit> visits, MarkReading reading, Optional<InsidePrint> proof, boolean followed) {

    public Measuring {
        visits = List.copyOf(visits);
    }

    /** Two marks fix a place, with more they check each other. */
    public static final int FEWEST = 2;
    /** No machine shows numbers beyond this in its own unit: ten metres or more. */
    public static final double MOST_SHOWN = 10_000;

    /**
     * @param turns by how many quarters, clockwise, the print lies turned
     * @throws Refused with fewer than two marks, with marks too near to each other, or for a number that no machine shows
     */
    public static Measuring of(
            DrawnPrint print, int turns, List<MarkVisit> visits, Machine machine, PlacingRules rules) {
        return of(
                print,
                turns,
                visits,
                machine.control().axes(),
                machine.bed(),
                machine.beam().kerf().mm(),
                rules);
    }

    static Measuring of(
            DrawnPrint print,
            int turns,
            List<MarkVisit> visits,
            MachineAxes axes,
            Size bed,
            double kerf,
            PlacingRules rules) {
        if (visits.size() < FEWEST) {
            throw new Refused("placing.too-few", FEWEST);
        }
        List<Point> drawn = visits.stream()
                .map(visit -> DrawnPrint.turned(visit.drawn(), turns))
                .toList();
        List<Point> seen = visits.stream()
                .map(visit -> axes.onBed(visit.shownX(), visit.shownY(), bed))
                .toList();
        visits.stream().filter(Measuring::isBeyondAnyBed).findFirst().ifPresent(far -> {
            throw new Refused("placing.far-away", Integer.toString(far.mark()));
        });
        if (!MarkReading.fixAnAngle(drawn)) {
            throw new Refused("placing.too-near", Length.mm(MarkReading.LEAST_APART_MM));
        }
        MarkReading reading = MarkReading.of(drawn, seen, rules.expectation());
        if (!reading.isPlaced()) {
            return new Measuring(visits, reading, Optional.empty(), false);
        }
        SimilarityFit fit = reading.fit();
        boolean followed = rules.follows(fit.place().stretch());
        InsidePrint proof = InsidePrint.of(
                print.outline(turns),
                fit,
                new InsidePrint.Question(
                        print.edges(turns),
                        kerf,
                        rules.reading().mm(),
                        PlacingRules.SURE,
                        rules.repeatability().mm(),
                        followed));
        return new Measuring(visits, reading, Optional.of(proof), followed);
    }

    private static boolean isBeyondAnyBed(MarkVisit visit) {
        return !(Math.abs(visit.shownX()) <= MOST_SHOWN && Math.abs(visit.shownY()) <= MOST_SHOWN);
    }

    /** What the readings say, in words. */
    public Sentence said() {
        Object[] marks = reading.concerned().stream()
                .map(i -> Integer.toString(visits.get(i).mark()))
                .toArray();
        return Sentence.of("placing.said." + reading.verdict().name(), marks);
    }
}
