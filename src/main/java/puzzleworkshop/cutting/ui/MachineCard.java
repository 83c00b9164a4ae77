package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import puzzleworkshop.cutting.time.MachineRatio;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.machines.Machine;

/** One machine: its bed drawn to scale with an A4 sheet on it, what it can do, and how true its estimates are. */
public class MachineCard extends Div {

    private static final double LARGEST_BED_MM = 1000;

    /** What can be done with a machine from its card. */
    public record Deeds(
            Runnable choose, boolean mayChange, Runnable edit, Runnable makeStandard, Runnable retireOrBack) {}

    public MachineCard(Machine machine, MachineRatio ratio, boolean shown, Formatter figures, Deeds deeds) {
        addClassNames("cutting-machine", "pw-section");
        getElement().setAttribute("data-shown", shown);
        Div words = new Div(new H2(machine.name()));
        words.addClassName("pw-stack");
        if (machine.standard()) {
            words.add(new Verdict(Verdict.Kind.GOOD, figures.text("cutting.machine.standard")));
        }
        if (machine.retired()) {
            words.add(new Verdict(Verdict.Kind.WAIT, figures.text("cutting.machine.retired")));
        }
        words.add(new Paragraph(figures.text(
                "cutting.machine.facts",
                machine.beam().powerWatts(),
                Integer.toString(machine.beam().wavelengthNm()),
                machine.bed())));
        SmallText speeds = new SmallText(
                figures.text("cutting.machine.speeds", machine.motion().maxCut()));
        SmallText truth = new SmallText(ratioWords(ratio, figures));
        words.add(speeds, truth);
        Div top = new Div(bed(machine, figures), words);
        top.addClassName("cutting-machine-top");
        Div buttons = new Div();
        buttons.addClassName("cutting-machine-buttons");
        if (!shown) {
            buttons.add(button("cutting.machine.show", figures, deeds.choose()));
        }
        if (deeds.mayChange()) {
            buttons.add(button("cutting.machine.edit", figures, deeds.edit()));
        }
        Anchor places = new Anchor("machines/places/" + machine.id(), figures.text("cutting.machine.places"));
        places.addClassName("pw-link-button");
        buttons.add(places);
        if (deeds.mayChange() && !machine.standard()) {
            // one that is retired is taken back first: one press less in its row, and nobody plans on it by mistake
            if (!machine.retired()) {
                buttons.add(button("cutting.machine.make.standard", figures, deeds.makeStandard()));
            }
            buttons.add(button(
                    machine.retired() ? "cutting.machine.back" : "cutting.machine.retire",
                    figures,
                    deeds.retireOrBack()));
        }
        add(top, buttons);
    }

    static String ratioWords(MachineRatio ratio, Formatter figures) {
        return ratio.isMeasured()
                ? figures.text("cutting.ratio", ratio.median(), ratio.spread(), ratio.cuts())
                : figures.text("cutting.ratio.unmeasured", ratio.cuts());
    }

    private static Button button(String key, Formatter figures, Runnable deed) {
        Button button = new Button(figures.text(key), event -> deed.run());
        button.addThemeVariants(ButtonVariant.SMALL);
        return button;
    }

    private static SvgBox bed(Machine machine, Formatter figures) {
        double w = machine.bed().width().mm();
        double h = machine.bed().height().mm();
        double side = Math.min(LARGEST_BED_MM, Math.max(w, h));
        Svg svg = Svg.of(
                        -6,
                        -6,
                        w + 12,
                        h + 12,
                        figures.text("cutting.bed", machine.name()),
                        figures.text("cutting.bed.words", machine.bed()))
                .rect(0, 0, w, h, "cutting-bed");
        double step = Math.max(50, side / 8);
        for (double x = step; x < w; x += step) {
            svg.line(x, 0, x, h, "cutting-bed-line");
        }
        for (double y = step; y < h; y += step) {
            svg.line(0, y, w, y, "cutting-bed-line");
        }
        double aw = w >= h ? 297 : 210;
        double ah = w >= h ? 210 : 297;
        if (aw <= w && ah <= h) {
            svg.rect((w - aw) / 2, (h - ah) / 2, aw, ah, "cutting-bed-sheet");
            svg.text(w / 2, h / 2 + side * 0.03, side * 0.09, "middle", "A4", "cutting-bed-text");
        }
        return new SvgBox("cutting-bed-box").draw(svg);
    }
}
