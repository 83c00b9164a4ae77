package puzzleworkshop.cutfiles;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Sentence;

/**
 * What was found in a cut file drawn elsewhere.
 *
 * @param file as read
 * @param frame smallest upright rectangle around all lines: the real size
 * @param totalLengthMm length of all lines, doubles counted as often as they are drawn
 * @param stretches how many straight stretches the lines were taken apart into
 * @param findings worst first; empty for a clean file
 * @param cleaned all lines with one of each double kept
 * @param cleanedLengthMm length of those
 */
public record Inspection(
        DrawnFile file,
        Bounds frame,
        double totalLengthMm,
        int stretches,
        List<Finding> findings,
        List<CurvePath> cleaned,
        double cleanedLengthMm) {

    /** Kinds of trouble, the worst first. */
    public enum Trouble {
        /** Drawn more than once: burnt twice. */
        DOUBLED(true),
        /** The outer edge has a gap: the puzzle does not come off the sheet. */
        OPEN_OUTLINE(true),
        /** Lines beyond the machine's bed. */
        OUTSIDE_BED(true),
        /** Lines beyond the print. */
        OUTSIDE_PRINT(true),
        /** Lines that cross each other more than once, or a line that crosses itself. */
        CROSSING(true),
        /** A line that ends in the open. */
        LOOSE_END(false),
        /** Specks and very short stretches: the head stutters. */
        TINY(false);

        private final boolean serious;

        Trouble(boolean serious) {
            this.serious = serious;
        }

        public boolean isSerious() {
            return serious;
        }
    }

    /**
     * One kind of trouble with all its places.
     *
     * @param trouble what
     * @param count how often
     * @param lengthMm how much line it concerns; 0 where length says nothing
     * @param runs stretches to mark, at most {@link CutInspector#MOST_MARKS}
     * @param places points to mark, at most as many
     */
    public record Finding(Trouble trouble, int count, double lengthMm, List<CurvePath> runs, List<Point> places) {

        public Finding {
            runs = List.copyOf(runs);
            places = List.copyOf(places);
        }

        /** In one sentence. */
        public Sentence sentence() {
            return Sentence.of("pattern.found." + trouble.name(), count, puzzleworkshop.measure.Length.mm(lengthMm));
        }
    }

    public Inspection {
        findings = List.copyOf(findings);
        cleaned = List.copyOf(cleaned);
    }

    public Optional<Finding> of(Trouble trouble) {
        return findings.stream().filter(finding -> finding.trouble() == trouble).findFirst();
    }

    public boolean hasDoubles() {
        return of(Trouble.DOUBLED).isPresent();
    }

    /** Line that need not be cut a second time. */
    public double savedMm() {
        return totalLengthMm - cleanedLengthMm;
    }

    /** The cleaned lines in a good order, outline last; the outline is the closed line that spans the frame, if any. */
    public CutPlan cleanedPlan() {
        List<CurvePath> outline = cleaned.stream()
                .filter(line -> line.closed() && spans(line.bounds()))
                .limit(1)
                .toList();
        List<CurvePath> inner =
                cleaned.stream().filter(line -> !outline.contains(line)).toList();
        CutPlan plan = CutPlan.of(file.name(), inner, outline, CutPlan.Sequence.INNER_FIRST);
        // a file may lie anywhere; what we write starts at its own corner
        Bounds bounds = plan.frame();
        return plan.movedBy(-bounds.minX(), -bounds.minY());
    }

    private boolean spans(Bounds bounds) {
        return bounds.width() >= 0.98 * frame.width() && bounds.height() >= 0.98 * frame.height();
    }
}
