package puzzleworkshop.geometry.assign;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.NoOverlap2dConstraint;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

/** OR-Tools' CP-SAT judges whether a few rectangles lie in a board along its edges. */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class UprightFitTest {

    @Test
    void says_what_a_constraint_solver_says() {
        Loader.loadNativeLibraries();
        Random random = new Random(Seeds.from(151));
        int held = 0;
        for (int round = 0; round < 20; round++) {
            Size board = Size.mm(400 + 10 * random.nextInt(40), 300 + 10 * random.nextInt(30));
            List<Size> rectangles = new ArrayList<>();
            double area = 0;
            while (area < 0.7 * board.area().mm2()) {
                Size next = Size.mm(150 + 10 * random.nextInt(25), 120 + 10 * random.nextInt(15));
                rectangles.add(next);
                area += next.area().mm2();
            }
            boolean ours = UprightFit.mayHold(board, rectangles);
            assertThat(ours).as("round %d: %s on %s", round, rectangles, board).isEqualTo(solver(board, rectangles));
            held += ours ? 1 : 0;
        }
        assertThat(held).isBetween(2, 18);
    }

    @Test
    void five_around_a_hole_that_no_saw_cuts_apart_do_lie_there() {
        List<Size> around =
                List.of(Size.mm(200, 100), Size.mm(200, 100), Size.mm(200, 100), Size.mm(200, 100), Size.mm(100, 100));
        assertThat(UprightFit.mayHold(Size.mm(300, 300), around)).isTrue();
        assertThat(UprightFit.mayHold(Size.mm(300, 299), around)).isFalse();
    }

    private static boolean solver(Size board, List<Size> rectangles) {
        CpModel model = new CpModel();
        NoOverlap2dConstraint apart = model.addNoOverlap2D();
        for (Size size : rectangles) {
            long a = Math.round(size.width().mm());
            long b = Math.round(size.height().mm());
            BoolVar turned = model.newBoolVar("");
            LinearExpr w = LinearExpr.affine(turned, b - a, a);
            LinearExpr h = LinearExpr.affine(turned, a - b, b);
            IntVar x = model.newIntVar(0, Math.round(board.width().mm()), "");
            IntVar y = model.newIntVar(0, Math.round(board.height().mm()), "");
            IntVar right = model.newIntVar(0, Math.round(board.width().mm()), "");
            IntVar top = model.newIntVar(0, Math.round(board.height().mm()), "");
            apart.addRectangle(model.newIntervalVar(x, w, right, ""), model.newIntervalVar(y, h, top, ""));
        }
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setMaxDeterministicTime(20);
        CpSolverStatus status = solver.solve(model);
        assertThat(status).isIn(CpSolverStatus.OPTIMAL, CpSolverStatus.FEASIBLE, CpSolverStatus.INFEASIBLE);
        return status != CpSolverStatus.INFEASIBLE;
    }
}
