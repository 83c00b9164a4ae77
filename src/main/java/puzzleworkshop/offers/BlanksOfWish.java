package puzzleworkshop.offers;

import java.util.List;
import org.springframework.stereotype.Component;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.boards.BlankPlanner;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Offer.Question;
import puzzleworkshop.pattern.Tray;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.Suggestion;

/** The boards and blanks of a wish: which sheets, which others a seller may want, and those of its trays. */
@Component
class BlanksOfWish {

    private final BlankPlanner planner;
    private final SheetRack rack;
    private final RackSettings rackSettings;

    BlanksOfWish(BlankPlanner planner, SheetRack rack, RackSettings rackSettings) {
        this.planner = planner;
        this.rack = rack;
        this.rackSettings = rackSettings;
    }

    /** What others may change meanwhile. */
    List<Object> rackNow() {
        return List.of(rack.stamp(), rackSettings.rules(), rackSettings.offers());
    }

    /** For one puzzle a seller may want another sheet than the one that loses least. */
    List<Suggestion> otherSheets(WishAtWork at, List<Object> rackNow) {
        return at.machine()
                .map(m -> at.before()
                        .of(
                                Remembered.Part.OTHER_SHEETS,
                                List.of(
                                        rackNow,
                                        at.numbers(),
                                        at.wish().puzzle().finished(),
                                        at.wish().board(),
                                        m.bowLimit()),
                                () -> planner.choices(
                                        at.numbers(),
                                        at.wish().puzzle().finished(),
                                        at.wish().board(),
                                        m.bowLimit())))
                .orElse(List.of());
    }

    BlankPlan boards(WishAtWork at, Machine machine, List<Object> rackNow) {
        BlankPlan plan = at.before()
                .of(
                        Remembered.Part.BOARDS,
                        List.of(
                                rackNow,
                                at.numbers(),
                                at.wish().puzzle().finished(),
                                at.wish().quantity(),
                                at.wish().board(),
                                at.wish().sheet(),
                                machine.bowLimit(),
                                machine.bed()),
                        () -> planner.plan(
                                at.numbers(),
                                at.wish().puzzle().finished(),
                                at.wish().quantity(),
                                at.wish().board(),
                                at.wish().sheet(),
                                machine.bowLimit(),
                                machine.bed(),
                                at.stillWanted()));
        if (!plan.isComplete()) {
            at.complain(
                    Question.BOARD,
                    Sentence.of(
                            "offers.problem.no-board",
                            at.numbers().blankFor(at.wish().puzzle().finished())));
        }
        return at.wish().puzzle().tray() ? withTrays(at, plan, machine) : plan;
    }

    private BlankPlan withTrays(WishAtWork at, BlankPlan puzzles, Machine machine) {
        Size outer = Tray.of(at.spec()).outerSize();
        Size blank = BlankPlan.trayBlockSize(at.numbers(), outer, 1, 1);
        if (!blank.fitsUpright(machine.bed())) {
            at.complain(Question.SIZE, Sentence.of("offers.problem.tray-bed", blank, machine.name(), machine.bed()));
            return puzzles;
        }
        BlankPlan plan = planner.withTrays(
                puzzles,
                at.numbers(),
                outer,
                at.wish().quantity(),
                at.wish().board(),
                machine.bowLimit(),
                machine.bed(),
                at.stillWanted());
        if (puzzles.isComplete() && !plan.isComplete()) {
            at.complain(Question.BOARD, Sentence.of("offers.problem.no-tray-board", blank));
        }
        return plan;
    }
}
