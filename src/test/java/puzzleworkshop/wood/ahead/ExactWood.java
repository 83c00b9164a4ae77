package puzzleworkshop.wood.ahead;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.IntervalVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import com.google.ortools.sat.NoOverlap2dConstraint;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPeriod;

/**
 * The judge: all periods known, exact, by OR-Tools' CP-SAT. A blank lies on exactly one board that was on offer by then and is
 * bought; what lies on a board does not overlap (whatever order it is cut in: earlier blanks are just there).
 */
public final class ExactWood {

    /** What the solver found: its bound always holds, the cost is the least when proven. */
    public record Answer(boolean possible, boolean proven, long cost, long bound) {}

    private ExactWood() {}

    public static Answer solve(WoodCase woodCase, double seconds) {
        Loader.loadNativeLibraries();
        CpModel model = new CpModel();
        LinearExprBuilder cost = LinearExpr.newBuilder();
        List<ForSale> boards = new ArrayList<>();
        List<BoolVar> bought = new ArrayList<>();
        List<NoOverlap2dConstraint> free = new ArrayList<>();
        List<LinearExprBuilder> area = new ArrayList<>();
        for (WoodPeriod period : woodCase.periods()) {
            for (ForSale board : period.offers()) {
                BoolVar buy = model.newBoolVar("buy" + boards.size());
                cost.addTerm(buy, board.cost());
                boards.add(board);
                bought.add(buy);
                free.add(model.addNoOverlap2D());
                area.add(LinearExpr.newBuilder());
            }
            for (Wanted blank : period.blanks()) {
                List<Literal> ways = new ArrayList<>();
                for (int b = 0; b < boards.size(); b++) {
                    for (Wanted way : woodCase.turning() && blank.width() != blank.height()
                            ? List.of(blank, blank.turned())
                            : List.of(blank)) {
                        if (!way.fits(boards.get(b).width(), boards.get(b).height())) {
                            continue;
                        }
                        BoolVar here = model.newBoolVar("");
                        model.addImplication(here, bought.get(b));
                        IntVar x = model.newIntVar(0, boards.get(b).width() - way.width(), "");
                        IntVar y = model.newIntVar(0, boards.get(b).height() - way.height(), "");
                        IntervalVar across = model.newOptionalFixedSizeIntervalVar(x, way.width(), here, "");
                        IntervalVar down = model.newOptionalFixedSizeIntervalVar(y, way.height(), here, "");
                        free.get(b).addRectangle(across, down);
                        area.get(b).addTerm(here, way.area());
                        ways.add(here);
                    }
                }
                if (ways.isEmpty()) {
                    return new Answer(false, true, 0, 0);
                }
                model.addExactlyOne(ways);
            }
        }
        for (int b = 0; b < boards.size(); b++) {
            model.addLessOrEqual(
                    area.get(b), LinearExpr.term(bought.get(b), boards.get(b).area()));
        }
        model.minimize(cost);
        CpSolver solver = new CpSolver();
        solver.getParameters().setMaxTimeInSeconds(seconds).setNumWorkers(2).setRandomSeed(1);
        CpSolverStatus status = solver.solve(model);
        return switch (status) {
            case OPTIMAL ->
                new Answer(true, true, Math.round(solver.objectiveValue()), Math.round(solver.objectiveValue()));
            case FEASIBLE ->
                new Answer(true, false, Math.round(solver.objectiveValue()), (long)
                        Math.ceil(solver.bestObjectiveBound() - 1e-6));
            case INFEASIBLE -> new Answer(false, true, 0, 0);
            default -> new Answer(true, false, Long.MAX_VALUE, (long) Math.ceil(solver.bestObjectiveBound() - 1e-6));
        };
    }
}
