package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.geometry.align.NeededOverhang;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.placing.LearnedPlace;
import puzzleworkshop.placing.LearnedPlaces;

/** Where the fence on a machine's bed brings prints, how surely, and the word that it was put there again. */
class FenceSection extends Div {

    private final transient Machine machine;
    private final transient LearnedPlaces learned;
    private final transient Formatter figures;
    private final Div known = new Div();

    FenceSection(Machine machine, LearnedPlaces learned, String who, Formatter figures) {
        this.machine = machine;
        this.learned = learned;
        this.figures = figures;
        addClassName("pw-section");
        known.addClassName("pw-stack");
        Button laid = new Button(figures.text("placing.fence.laid"), event -> {
            if (Feedback.unlessRefused(
                    figures, "placing.fence.laid.noted", () -> learned.fenceLaid(machine.id(), who))) {
                show();
            }
        });
        laid.setId("fence-laid");
        SmallText why = new SmallText(figures.text("placing.fence.laid.why"));
        add(new H2(figures.text("placing.fence")), known, laid, why);
        show();
    }

    private void show() {
        known.removeAll();
        LearnedPlace fence = learned.fence(machine);
        fence.laid().ifPresent(at -> known.add(new Paragraph(figures.text("placing.fence.since", figures.moment(at)))));
        known.add(new Paragraph(figures.text("placing.fence.boards", fence.since())));
        if (fence.since() > 0) {
            known.add(new Paragraph(words(fence, figures)));
        }
        if (!Double.isNaN(fence.shifted())) {
            known.add(new Paragraph(figures.text(
                    "placing.fence.usual", Length.mm(fence.shifted()), figures.number(fence.turned(), 2))));
        }
    }

    /** How far off a print in the fence counts that is not measured, and from what that is known. */
    static String words(LearnedPlace fence, Formatter figures) {
        return figures.text(
                fence.learnedFrom() > 0 ? "placing.fence.learned" : "placing.fence.practice",
                fence.shift(),
                figures.number(fence.turnDegrees(), 2),
                fence.learnedFrom() > 0 ? fence.learnedFrom() : NeededOverhang.FEWEST);
    }
}
