package puzzleworkshop.orders;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Tray;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * What is made: the pattern (size, grid, seed, style) and for whom it is meant.
 *
 * @param age for whom it is meant; decides the warning in the box
 * @param tray whether a tray (frame and backing) of the same size goes with it
 * @param pieces as they are counted into the box
 */
public record Puzzle(PatternSpec pattern, IntendedAge age, boolean tray, int pieces) {

    /** With its pieces counted: a personal piece adds itself and may swallow others. */
    public Puzzle(PatternSpec pattern, IntendedAge age, boolean tray) {
        this(
                pattern,
                age,
                tray,
                pattern.countsAsGrid()
                        ? pattern.grid().pieces()
                        : PatternMaker.make(pattern).pieces().size());
    }

    public Size finished() {
        return pattern.size();
    }

    /**
     * All that the beam follows for one puzzle, its tray included: with the short way between lines that a cut file takes, so
     * that time worked out on it is the file's. Heat is not looked at, which takes longer and makes the way little longer.
     */
    public List<CurvePath> cutPaths(CutPattern drawn, boolean outlineLast) {
        List<CurvePath> way = CutPlan.beforeCooling(
                outlineLast ? drawn.inner() : List.of(drawn.outline()),
                outlineLast ? List.of(drawn.outline()) : drawn.inner());
        List<CurvePath> paths = new ArrayList<>(way);
        if (tray) {
            Tray made = Tray.of(pattern);
            paths.addAll(made.frame(CutPlan.Sequence.INNER_FIRST).inOrder());
            paths.addAll(made.backing().inOrder());
        }
        return paths;
    }
}
