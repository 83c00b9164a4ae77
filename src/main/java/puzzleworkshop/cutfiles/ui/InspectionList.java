package puzzleworkshop.cutfiles.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeButton;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import puzzleworkshop.cutfiles.Inspection;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;

/** The facts of an inspected file, what was found in words, and the cleaned file to take away. */
class InspectionList extends Div {

    private final transient Formatter figures;
    private final transient BiConsumer<Inspection, Optional<Inspection.Finding>> choose;

    /** @param choose called with the finding to mark alone, or none for all */
    InspectionList(Formatter figures, BiConsumer<Inspection, Optional<Inspection.Finding>> choose) {
        this.figures = figures;
        this.choose = choose;
        addClassNames("pw-section", "pattern-check-list");
    }

    void show(Inspection inspection, Speed speed) {
        removeAll();
        add(new H2(inspection.file().name()), verdict(inspection), facts(inspection, speed));
        inspection
                .file()
                .remarks()
                .forEach(remark -> add(new Note(
                        remark.kind() == Remark.Kind.NOTE ? Note.Kind.PLAIN : Note.Kind.WARN,
                        figures.say(remark.sentence()))));
        if (!inspection.findings().isEmpty()) {
            add(findings(inspection));
        }
        if (inspection.hasDoubles()) {
            add(cleaned(inspection, speed));
        }
        SmallText caution = new SmallText(getTranslation("pattern.check.caution"));
        add(caution);
    }

    private Component verdict(Inspection inspection) {
        boolean serious = inspection.findings().stream()
                .anyMatch(finding -> finding.trouble().isSerious());
        if (inspection.findings().isEmpty() && !inspection.file().isSure()) {
            return new Verdict(Verdict.Kind.WARN, getTranslation("pattern.check.not-sure"));
        }
        if (inspection.findings().isEmpty()) {
            return new Verdict(Verdict.Kind.GOOD, getTranslation("pattern.check.clean"));
        }
        return serious
                ? new Verdict(Verdict.Kind.BAD, getTranslation("pattern.check.mend"))
                : new Verdict(Verdict.Kind.WARN, getTranslation("pattern.check.look"));
    }

    private Component facts(Inspection inspection, Speed speed) {
        Div facts = new Div();
        facts.addClassName("pattern-facts");
        double width = Math.max(inspection.frame().width(), 0.001);
        double height = Math.max(inspection.frame().height(), 0.001);
        fact(facts, "pattern.check.size", figures.size(Size.mm(width, height)));
        fact(
                facts,
                "pattern.check.lines",
                figures.number(inspection.file().lines().size(), 0));
        fact(facts, "pattern.check.length", figures.length(Length.mm(inspection.totalLengthMm())));
        fact(facts, "pattern.check.time", figures.minutes(time(inspection.totalLengthMm(), speed)));
        return facts;
    }

    private static Minutes time(double lengthMm, Speed speed) {
        return Minutes.ofSeconds(lengthMm / speed.mmPerSecond());
    }

    private void fact(Div facts, String key, String value) {
        Span name = new Span(getTranslation(key));
        name.addClassName("pw-soft");
        Span shown = new Span(value);
        shown.addClassName("pw-number");
        facts.add(name, shown);
    }

    private Component findings(Inspection inspection) {
        Div rows = new Div();
        rows.addClassName("pattern-findings");
        List<Inspection.Finding> findings = inspection.findings();
        for (int i = 0; i < findings.size(); i++) {
            Inspection.Finding finding = findings.get(i);
            Span number = new Span(Integer.toString(i + 1));
            number.addClassName("pattern-finding-number");
            NativeButton row = new NativeButton();
            row.add(number, new Span(figures.say(finding.sentence())));
            row.addClassName("pattern-finding");
            row.getElement().setAttribute("data-kind", finding.trouble().isSerious() ? "bad" : "warn");
            row.getElement().setAttribute("aria-pressed", "false");
            row.addClickListener(event -> {
                boolean alone = row.getElement().getAttribute("aria-pressed").equals("false");
                rows.getChildren().forEach(other -> other.getElement().setAttribute("aria-pressed", "false"));
                row.getElement().setAttribute("aria-pressed", Boolean.toString(alone));
                choose.accept(inspection, alone ? Optional.of(finding) : Optional.empty());
            });
            rows.add(row);
        }
        return rows;
    }

    private Component cleaned(Inspection inspection, Speed speed) {
        Paragraph saved = new Paragraph(getTranslation(
                "pattern.check.saved",
                figures.length(Length.mm(inspection.savedMm())),
                figures.minutes(time(inspection.savedMm(), speed)),
                figures.speed(speed)));
        String name = inspection.file().name().replaceAll("\\.[A-Za-z]+$", "") + "-"
                + getTranslation("pattern.check.cleaned-name");
        Div cleaned = new Div(
                new H2(getTranslation("pattern.check.keep-one")),
                saved,
                new CutFileLinks(name, inspection::cleanedPlan));
        if (!inspection.file().unsure().isEmpty()) {
            cleaned.addComponentAtIndex(2, new Note(Note.Kind.WARN, getTranslation("pattern.check.without-unsure")));
        }
        cleaned.addClassNames("pw-stack", "pattern-cleaned");
        return cleaned;
    }
}
