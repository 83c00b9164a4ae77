package puzzleworkshop.artwork.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.OptionalInt;
import puzzleworkshop.artwork.OriginalsRule;
import puzzleworkshop.artwork.UnusedPictureCleanup;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.workshop.ui.SetUpPart;
import puzzleworkshop.workshop.ui.SetUpSection;

/** In Set-up: how many pictures are kept, and which were thrown away because nothing used them. */
@org.springframework.stereotype.Component
class PicturesSection implements SetUpSection {

    private static final int PLACE = 80;
    private static final int LINES = 5;
    private static final long MEGABYTE = 1_000_000;

    private final UnusedPictureCleanup care;
    private final OriginalsRule rule;
    private final Formatter figures;

    PicturesSection(UnusedPictureCleanup care, OriginalsRule rule, Formatter figures) {
        this.care = care;
        this.rule = rule;
        this.figures = figures;
    }

    @Override
    public int place() {
        return PLACE;
    }

    @Override
    public List<SetUpPart> parts() {
        return List.of(new SetUpPart("artwork.kept.title", this::show));
    }

    private Component show() {
        UnusedPictureCleanup.Kept kept = care.kept();
        PageSection section = new PageSection(
                figures.text("artwork.kept.title"),
                soft(figures.text("artwork.kept.lead", UnusedPictureCleanup.KEPT.toDays())),
                new Paragraph(figures.text("artwork.kept", kept.pictures(), megabytes(kept.bytes()))));
        List<UnusedPictureCleanup.Clearing> clearings = care.clearings(LINES);
        if (clearings.isEmpty()) {
            section.add(soft(figures.text("artwork.kept.none-cleared")));
        }
        section.add(originals());
        clearings.forEach(clearing -> section.add(soft(figures.text(
                "artwork.kept.cleared",
                figures.moment(clearing.at()),
                clearing.pictures(),
                megabytes(clearing.bytes())))));
        return section;
    }

    private Component originals() {
        IntegerField months = new IntegerField(figures.text("artwork.originals.field"));
        months.setHelperText(figures.text("artwork.originals.help"));
        months.setMin(1);
        months.setMax(OriginalsRule.MOST_MONTHS);
        months.setStepButtonsVisible(true);
        months.setClearButtonVisible(true);
        months.setValueChangeMode(ValueChangeMode.LAZY);
        rule.months().ifPresent(months::setValue);
        Paragraph frees = soft("");
        frees.getElement().setAttribute("aria-live", "polite");
        Runnable show = () -> frees.setText(frees(months));
        months.addValueChangeListener(event -> show.run());
        show.run();
        Button save = new Button(figures.text("workshop.save"), event -> {
            if (!months.isInvalid()) {
                Feedback.unlessRefused(
                        figures,
                        "artwork.originals.saved",
                        () -> rule.save(
                                months.getValue() == null ? OptionalInt.empty() : OptionalInt.of(months.getValue())));
            }
        });
        Div row = new Div(months, save);
        row.addClassName("pw-row");
        Div originals = new Div(new H3(figures.text("artwork.originals")), row, frees);
        originals.addClassName("pw-stack");
        rule.clearings(LINES)
                .forEach(clearing -> originals.add(soft(figures.text(
                        "artwork.originals.cleared",
                        figures.moment(clearing.at()),
                        clearing.pictures(),
                        megabytes(clearing.bytes())))));
        return originals;
    }

    private String frees(IntegerField months) {
        if (months.getValue() == null) {
            return figures.text("artwork.originals.never");
        }
        if (months.getValue() < 1 || months.getValue() > OriginalsRule.MOST_MONTHS) {
            return figures.text("artwork.originals.months", OriginalsRule.MOST_MONTHS);
        }
        UnusedPictureCleanup.Kept freed = rule.wouldFree(months.getValue());
        return figures.text("artwork.originals.frees", freed.pictures(), megabytes(freed.bytes()));
    }

    private static BigDecimal megabytes(long bytes) {
        return BigDecimal.valueOf(bytes).divide(BigDecimal.valueOf(MEGABYTE), 1, RoundingMode.HALF_UP);
    }

    private static Paragraph soft(String text) {
        SmallText paragraph = new SmallText(text);
        return paragraph;
    }
}
