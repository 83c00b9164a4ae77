package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.cutfiles.ui.CutFileLinks;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Length;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Hold;
import puzzleworkshop.pattern.StickingCheck;
import puzzleworkshop.pattern.Tray;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;

/** What a pattern amounts to: pieces, lengths, what was verified, small parts, sticking, and its cut files. */
class PatternFacts extends Div {

    private final transient Formatter figures;

    PatternFacts(Formatter figures) {
        this.figures = figures;
        addClassNames("pw-section", "pattern-check-list");
    }

    void show(CutPattern pattern, SmallPartsVerdict verdict) {
        removeAll();
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
        fact(
                facts,
                "pattern.draw.fact.piece-size",
                figures.size(pattern.spec().grid().pieceSize(pattern.spec().size())));
        fact(facts, "pattern.draw.fact.length", figures.length(Length.mm(pattern.totalLengthMm())));
        fact(
                facts,
                "pattern.draw.fact.limit",
                figures.fine(Length.mm(pattern.verified().closestAllowedMm())));
        double unlike = pattern.verified().unlikeMm();
        fact(facts, "pattern.draw.fact.unlike", figures.fine(Length.mm(unlike)));
        Hold hold = Hold.of(pattern);
        fact(facts, "pattern.draw.fact.thinnest", figures.fine(Length.mm(hold.narrowestMm())));
        fact(
                facts,
                "pattern.draw.fact.joints",
                getTranslation("pattern.draw.fact.joints.of", hold.holding(), hold.joints()));
        if (hold.holding() > 0) {
            fact(facts, "pattern.draw.fact.grip", figures.fine(Length.mm(hold.weakestGripMm())));
        }
        add(
                new H2(getTranslation("pattern.draw.fact.title", pattern.spec().seed())),
                new Verdict(Verdict.Kind.GOOD, getTranslation("pattern.draw.verified")),
                unlike(pattern),
                facts);
        add(
                new SmallPartsNote(verdict, figures),
                new StickingVerdict(
                        StickingCheck.of(pattern),
                        pattern.outline(),
                        pattern.spec().size(),
                        figures));
        Tray tray = Tray.of(pattern.spec());
        String name = pattern.pieces().size() + "-" + pattern.spec().seed();
        add(
                files("pattern.draw.files", new CutFileLinks(name, () -> pattern.plan(CutPlan.Sequence.INNER_FIRST))),
                files(
                        "pattern.draw.tray-frame",
                        new CutFileLinks(name + "-frame", () -> tray.frame(CutPlan.Sequence.INNER_FIRST))),
                files("pattern.draw.tray-backing", new CutFileLinks(name + "-backing", tray::backing)));
        Paragraph rule = new Paragraph(getTranslation("pattern.draw.hold.rule"));
        rule.addClassName("pw-small");
        add(rule);
        Paragraph caution = new Paragraph(getTranslation("pattern.draw.caution"));
        caution.addClassName("pw-small");
        add(caution);
    }

    private Component unlike(CutPattern pattern) {
        boolean told = pattern.verified().unlikeMm() > pattern.spec().kerf().mm();
        return new Verdict(
                told ? Verdict.Kind.GOOD : Verdict.Kind.WARN,
                getTranslation(told ? "pattern.draw.unlike" : "pattern.draw.alike"));
    }

    private Component files(String label, CutFileLinks links) {
        Span name = new Span(getTranslation(label));
        name.addClassName("pw-soft");
        Div row = new Div(name, links);
        row.addClassName("pattern-files");
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
