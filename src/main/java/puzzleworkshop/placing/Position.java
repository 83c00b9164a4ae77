package puzzleworkshop.placing;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.FoundStretch;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * Where one print was found to lie on the bed.
 *
 * @param id 0 while not kept
 * @param copy which of the order's puzzles, from 1
 * @param inJig whether the board lay in the locating jig
 * @param turns by how many quarters, clockwise, the print lies turned
 * @param axes as the machine counted then
 * @param bed as it was then
 * @param holdDown board beyond the sticker as it was then: from the fence to the print
 * @param kerf width of the cut that it was proven for
 * @param visits the marks, with the residual of each; none when the place is the jig's
 * @param place from the drawing, turned by quarters, to the bed (x right, y to the front, from the back left corner)
 * @param followed whether the cut is stretched as the print is
 * @param spare what is left between cut and edge of the print with everything unknown taken the worst way; negative when
 *     the cut may leave the print
 * @param uncertainty of the place where least is left
 * @param moved whether the board was moved since
 */
public record Position(
        long id,
        long jobId,
        long machineId,
        int copy,
        Source source,
        boolean inJig,
        int turns,
        MachineAxes axes,
        Size bed,
        Size finished,
        Length overhang,
        Length holdDown,
        Length kerf,
        List<Visited> visits,
        Similarity place,
        boolean followed,
        Length spare,
        Length uncertainty,
        Optional<Instant> moved,
        String by,
        Instant at) {

    /** From what the place is known. */
    public enum Source {
        MARKS,
        JIG
    }

    /** A mark and how far it was seen from where the place puts it. */
    public record Visited(MarkVisit visit, Length residual) {}

    public Position {
        visits = List.copyOf(visits);
    }

    public boolean holds() {
        return moved.isEmpty();
    }

    public boolean inside() {
        return spare.mm() >= 0;
    }

    /**
     * Whether its frame has a tick of its own before it is cut: the checklist has one tick, which says nothing about which
     * of several boards was traced, nor about a board measured after it was given.
     *
     * @param copies boards of the cut
     */
    public boolean asksToBeTraced(CutJob job, int copies) {
        return copies > 1
                || job.started().filter(begun -> !at.isBefore(begun.at())).isPresent();
    }

    /** Size of the puzzle as it is cut: with the stretch that the cut follows. */
    public Size cutSize() {
        double stretch = followed ? place.stretch() : 1;
        return new Size(finished.width().times(stretch), finished.height().times(stretch));
    }

    /** The stretch that its marks tell; none where no marks were visited. */
    public Optional<FoundStretch> stretch(PlacingRules rules) {
        List<Point> drawn = visits.stream().map(seen -> seen.visit().drawn()).toList();
        return drawn.isEmpty()
                ? Optional.empty()
                : Optional.of(FoundStretch.of(place, drawn, rules.reading().mm()));
    }

    /** The overhang that would just have done for this cut. */
    public Length needed() {
        return Length.mm(Math.max(0, overhang.mm() - spare.mm()));
    }
}
