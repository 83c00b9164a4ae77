package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.printing.media.PrintMedia;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.workshop.ui.SetUpPart;
import puzzleworkshop.workshop.ui.SetUpSection;

/** In Set-up: the sticker sheets and rolls the workshop prints on. */
@org.springframework.stereotype.Component
class MediaSection implements SetUpSection {

    private static final int PLACE = 40;

    private final PrintMedia media;
    private final Supplies supplies;
    private final Formatter figures;

    MediaSection(PrintMedia media, Supplies supplies, Formatter figures) {
        this.media = media;
        this.supplies = supplies;
        this.figures = figures;
    }

    @Override
    public int place() {
        return PLACE;
    }

    @Override
    public List<SetUpPart> parts() {
        return List.of(new SetUpPart("printing.medium.title", Rows::new));
    }

    /** The media as rows; made anew for each screen. */
    @StyleSheet("context://printing.css")
    private final class Rows extends Div {
        private final Div rows = new Div();

        Rows() {
            addClassName("pw-section");
            Paragraph lead = new Paragraph(getTranslation("printing.medium.lead"));
            lead.addClassName("pw-soft");
            Button fresh = new Button(getTranslation("printing.medium.new"), event -> edit(Optional.empty()));
            add(new H2(getTranslation("printing.medium.title")), lead, rows, fresh);
            refresh();
        }

        private void refresh() {
            rows.removeAll();
            media.all().forEach(medium -> rows.add(row(medium)));
        }

        private void edit(Optional<PrintMedium> medium) {
            new MediumDialog(media, supplies, figures, medium, this::refresh).open();
        }

        private Div row(PrintMedium medium) {
            Span name = new Span(
                    medium.usual() ? medium.name() + " · " + getTranslation("printing.medium.usual") : medium.name());
            Span size = new Span(getTranslation(
                            "printing.medium.kind." + medium.kind().name()) + ", " + figures.size(medium.size()));
            size.addClassName("pw-small");
            Button change = new Button(getTranslation("printing.medium.change"), event -> edit(Optional.of(medium)));
            change.setAriaLabel(getTranslation("printing.medium.change") + " " + medium.name());
            change.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
            Div words = new Div(name, size);
            words.addClassName("printing-waiting-words");
            Div row = new Div(words, change);
            row.addClassName("printing-media-row");
            return row;
        }
    }
}
