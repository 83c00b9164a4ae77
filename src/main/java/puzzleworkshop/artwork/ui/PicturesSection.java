package puzzleworkshop.artwork.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import puzzleworkshop.artwork.UnusedPictureCleanup;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.workshop.ui.SetUpSection;

/** In Set-up: how many pictures are kept, and which were thrown away because nothing used them. */
@org.springframework.stereotype.Component
class PicturesSection implements SetUpSection {

    private static final int PLACE = 80;
    private static final int LINES = 5;
    private static final long MEGABYTE = 1_000_000;

    private final UnusedPictureCleanup care;
    private final Formatter figures;

    PicturesSection(UnusedPictureCleanup care, Formatter figures) {
        this.care = care;
        this.figures = figures;
    }

    @Override
    public int place() {
        return PLACE;
    }

    @Override
    public Component show() {
        UnusedPictureCleanup.Kept kept = care.kept();
        Div section = new Div(
                new H2(figures.text("artwork.kept.title")),
                soft(figures.text("artwork.kept.lead", UnusedPictureCleanup.KEPT.toDays())),
                new Paragraph(figures.text("artwork.kept", kept.pictures(), megabytes(kept.bytes()))));
        section.addClassName("pw-section");
        List<UnusedPictureCleanup.Clearing> clearings = care.clearings(LINES);
        if (clearings.isEmpty()) {
            section.add(soft(figures.text("artwork.kept.none-cleared")));
        }
        clearings.forEach(clearing -> section.add(soft(figures.text(
                "artwork.kept.cleared",
                figures.moment(clearing.at()),
                clearing.pictures(),
                megabytes(clearing.bytes())))));
        return section;
    }

    private static BigDecimal megabytes(long bytes) {
        return BigDecimal.valueOf(bytes).divide(BigDecimal.valueOf(MEGABYTE), 1, RoundingMode.HALF_UP);
    }

    private static Paragraph soft(String text) {
        Paragraph paragraph = new Paragraph(text);
        paragraph.addClassName("pw-small");
        return paragraph;
    }
}
