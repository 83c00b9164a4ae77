package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.cutfiles.ui.CutFileLinks;
import puzzleworkshop.cutfiles.writing.CutHeat;
import puzzleworkshop.cutfiles.writing.CutPace;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Length;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Tray;
import puzzleworkshop.pattern.edges.PieceLikeness;
import puzzleworkshop.pattern.judged.Difficulty;
import puzzleworkshop.pattern.judged.Hold;
import puzzleworkshop.pattern.judged.StickingCheck;
import puzzleworkshop.pattern.mesh.KnobRoom;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;

/** What a pattern amounts to: pieces, lengths, what was verified, small parts, sticking, and its cut files. */
class PatternFacts extends Div {

    private final transient Formatter figures;

    /** Time and price stand beside size and pieces; what the wood bears comes after. */
    private final Div priced = new Div();

    private final Div burnt = new Div();
    private final Div alike = new Div();
    private final SmallText warm = new SmallText();
    private transient Hold held;
    private transient CutPace pace = CutPace.USUAL;

    PatternFacts(Formatter figures) {
        this.figures = figures;
        addClassNames("pw-section", "pattern-check-list");
        burnt.addClassName("pw-stack");
        alike.addClassName("pw-stack");
    }

    /** Time and price, as soon as they are worked out, and the way to an order. */
    void show(SketchDesk.Priced answer, Runnable order) {
        priced.removeAll();
        pace = answer.pace().orElse(CutPace.USUAL);
        Div facts = new Div();
        facts.addClassName("pattern-facts");
        answer.laser().ifPresent(time -> fact(facts, "pattern.draw.fact.laser", time));
        answer.price().ifPresent(price -> fact(facts, "pattern.draw.fact.price", price));
        priced.add(facts);
        burnt.removeAll();
        answer.burntMm().ifPresent(browned -> soundWood(browned, answer.grade()));
        for (String complaint : answer.complaints()) {
            Note said = new Note(Note.Kind.WARN, complaint);
            priced.add(said);
        }
        Button button = new Button(getTranslation("pattern.draw.order"), event -> order.run());
        button.addThemeVariants(ButtonVariant.PRIMARY);
        button.setId("order-this");
        priced.add(button);
    }

    /** What is left at the narrowest place when the browned wood of both cuts is not counted. */
    private void soundWood(double burntMm, String grade) {
        Div facts = new Div();
        facts.addClassName("pattern-facts");
        double sound = held.narrowestMm() - 2 * burntMm;
        double asked = held.leastSoundMm(grade);
        fact(facts, "pattern.draw.fact.burnt", figures.fine(Length.mm(burntMm)));
        fact(facts, "pattern.draw.fact.sound", figures.fine(Length.mm(sound)));
        boolean enough = sound >= asked;
        Div line = new Div(
                new Verdict(
                        enough ? Verdict.Kind.GOOD : Verdict.Kind.WARN,
                        getTranslation(enough ? "pattern.draw.hold.enough" : "pattern.draw.hold.little")),
                new Paragraph(figures.text(
                        "pattern.draw.hold.grade",
                        figures.number(asked, 2),
                        getTranslation("sheets.grade." + grade),
                        figures.number(sound, 2))));
        line.addClassName("pw-verdict-line");
        burnt.add(facts, line);
    }

    /** How many edges can differ, and the two edges and pieces most like each other. */
    void show(KnobRoom room, PieceLikeness likeness) {
        alike.removeAll();
        Div facts = new Div();
        facts.addClassName("pattern-facts");
        boolean beyondCounting = room.atMost() >= KnobRoom.MOST;
        fact(
                facts,
                "pattern.draw.fact.room",
                figures.text(
                        beyondCounting ? "pattern.draw.fact.room.from" : "pattern.draw.fact.room.of",
                        rounded(room.atLeast()),
                        beyondCounting ? 0 : rounded(room.atMost()),
                        room.needed()));
        double play = likeness.playMm();
        felt(facts, "pattern.draw.fact.edges", "pattern.draw.fact.edges-felt", likeness.edges(), play);
        felt(facts, "pattern.draw.fact.whole", "pattern.draw.fact.whole-felt", likeness.pieces(), play);
        SmallText rule = new SmallText(figures.text(
                "pattern.draw.room.rule", figures.number(room.distanceMm(), 2), figures.number(likeness.playMm(), 2)));
        alike.add(facts, rule);
    }

    /** How warm the board is where the beam arrives, cut in the order of the file, and when it comes back at the earliest. */
    void show(CutHeat heat) {
        if (Double.isFinite(heat.soonestSeconds())) {
            warm.setText(figures.text(
                    "pattern.draw.heat",
                    figures.number(heat.soonestSeconds(), 0),
                    figures.number(heat.peakKelvin(), 0),
                    figures.number(60 * pace.cutMmPerS(), 0)));
        }
    }

    CutPace pace() {
        return pace;
    }

    /** What lies farther apart than is looked for has no figures: nobody takes one for the other. */
    private void felt(Div facts, String key, String beyondKey, PieceLikeness.Felt felt, double play) {
        if (felt.mm() >= PieceLikeness.LOOKED_TO_MM) {
            fact(
                    facts,
                    key,
                    figures.text("pattern.draw.fact.apart.far", figures.number(PieceLikeness.LOOKED_TO_MM, 0)));
            return;
        }
        fact(facts, key, apart(felt.mm(), felt.areaMm2()));
        fact(facts, beyondKey, apart(felt.beyondMm(play), felt.beyondMm2()));
    }

    private String apart(double mm, double areaMm2) {
        return figures.text("pattern.draw.fact.apart", figures.number(mm, 2), figures.number(areaMm2, 1));
    }

    /** Two leading digits: these are estimates. */
    private static double rounded(double count) {
        double unit = Math.pow(10, Math.max(0, Math.floor(Math.log10(count)) - 1));
        return Math.round(count / unit) * unit;
    }

    void show(CutPattern pattern, SmallPartsVerdict verdict) {
        removeAll();
        priced.removeAll();
        priced.add(new Paragraph(getTranslation("pattern.draw.pricing")));
        priced.addClassName("pw-stack");
        Div facts = new Div();
        facts.addClassName("pattern-facts");
        fact(
                facts,
                "pattern.draw.fact.pieces",
                getTranslation(
                        "pattern.draw.fact.grid",
                        pattern.pieces().size(),
                        pattern.spec().grid().columns(),
                        pattern.spec().grid().rows()));
        fact(facts, "pattern.draw.fact.size", figures.size(pattern.spec().size()));
        fact(
                facts,
                "pattern.draw.fact.piece-size",
                figures.size(pattern.spec().grid().pieceSize(pattern.spec().size())));
        fact(
                facts,
                "pattern.draw.fact.hard",
                getTranslation(Difficulty.of(pattern).textKey()));
        alike.removeAll();
        burnt.removeAll();
        add(
                new H2(getTranslation("pattern.draw.fact.title", pattern.spec().seed())),
                new Verdict(Verdict.Kind.GOOD, getTranslation("pattern.draw.verified")),
                new FalseFitNote(pattern, figures),
                facts,
                priced,
                wood(pattern),
                burnt,
                alike,
                new SmallPartsNote(verdict, figures),
                new StickingVerdict(
                        StickingCheck.of(pattern),
                        pattern.outline(),
                        pattern.spec().size(),
                        figures));
        Tray tray = Tray.of(pattern.spec());
        String name = pattern.pieces().size() + "-" + pattern.spec().seed();
        add(
                files(
                        "pattern.draw.files",
                        new CutFileLinks(name, () -> pattern.plan(CutPlan.Sequence.INNER_FIRST, pace))),
                files(
                        "pattern.draw.tray-frame",
                        new CutFileLinks(name + "-frame", () -> tray.frame(CutPlan.Sequence.INNER_FIRST))),
                files("pattern.draw.tray-backing", new CutFileLinks(name + "-backing", tray::backing)));
        warm.setText("");
        add(warm);
        SmallText rule = new SmallText(getTranslation("pattern.draw.hold.rule"));
        add(rule);
        SmallText caution = new SmallText(getTranslation("pattern.draw.caution"));
        add(caution);
    }

    /** Lines, and whether the pieces hold. */
    private Div wood(CutPattern pattern) {
        Div facts = new Div();
        facts.addClassName("pattern-facts");
        fact(facts, "pattern.draw.fact.length", figures.length(Length.mm(pattern.totalLengthMm())));
        fact(
                facts,
                "pattern.draw.fact.limit",
                figures.fine(Length.mm(pattern.verified().closestAllowedMm())));
        fact(
                facts,
                "pattern.draw.fact.unlike",
                figures.fine(Length.mm(pattern.verified().unlikeMm())));
        Hold hold = Hold.of(pattern);
        held = hold;
        fact(facts, "pattern.draw.fact.thinnest", figures.fine(Length.mm(hold.narrowestMm())));
        fact(
                facts,
                "pattern.draw.fact.joints",
                getTranslation("pattern.draw.fact.joints.of", hold.holding(), hold.joints()));
        if (Double.isFinite(hold.neckMm())) {
            fact(facts, "pattern.draw.fact.neck", figures.fine(Length.mm(hold.neckMm())));
        }
        if (Double.isFinite(hold.bridgeMm())) {
            fact(facts, "pattern.draw.fact.bridge", figures.fine(Length.mm(hold.bridgeMm())));
        }
        if (hold.holding() > 0) {
            fact(facts, "pattern.draw.fact.grip", figures.fine(Length.mm(hold.weakestGripMm())));
        }
        return facts;
    }

    private Component files(String label, CutFileLinks links) {
        Span name = new Span(getTranslation(label));
        name.addClassName("pw-soft");
        Div row = new Div(name, links);
        row.addClassName("pw-apart");
        return row;
    }

    private void fact(Div facts, String key, String value) {
        Span name = new Span(getTranslation(key));
        name.addClassName("pw-soft");
        Span shown = new Span(value);
        shown.addClassName("pw-number");
        facts.add(name, shown);
    }
}
