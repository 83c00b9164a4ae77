package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.NativeTable;
import com.vaadin.flow.component.html.NativeTableBody;
import com.vaadin.flow.component.html.NativeTableCell;
import com.vaadin.flow.component.html.NativeTableHeader;
import com.vaadin.flow.component.html.NativeTableHeaderCell;
import com.vaadin.flow.component.html.NativeTableRow;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.NumberField;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.Arrays;
import java.util.Map;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;
import puzzleworkshop.workshop.Workshop;

/** What each stage takes; a row is kept as soon as one of its numbers is changed. */
class StageStandardsForm extends Div {

    private static final String[] COLUMNS = {"set-up", "per-puzzle", "per-piece", "rest", "rejects"};

    StageStandardsForm(Workshop workshop, Formatter figures) {
        addClassNames("pw-section", "workshop-standards");
        NativeTableHeader header = new NativeTableHeader();
        NativeTableRow titles =
                new NativeTableRow(new NativeTableHeaderCell(getTranslation("workshop.standard.stage")));
        for (String column : COLUMNS) {
            titles.add(new NativeTableHeaderCell(getTranslation("workshop.standard." + column)));
        }
        header.add(titles);
        NativeTableBody body = new NativeTableBody();
        Map<Stage, StageStandard> standards = workshop.stageStandards();
        for (Stage stage : Stage.values()) {
            body.add(row(standards.get(stage), workshop, figures));
        }
        add(
                new H2(getTranslation("workshop.standard")),
                new Paragraph(getTranslation("workshop.standard.lead")),
                new NativeTable(header, body));
    }

    private NativeTableRow row(StageStandard standard, Workshop workshop, Formatter figures) {
        String stage = getTranslation(standard.stage().textKey());
        NumberField setUp = field(stage, "set-up", standard.setUp().value(), 1000);
        NumberField perPuzzle = field(stage, "per-puzzle", standard.perPuzzle().value(), 1000);
        NumberField perPiece = field(stage, "per-piece", standard.perPiece().toSeconds(), 600);
        NumberField rest = field(stage, "rest", standard.rest().toMinutes() / 60.0, 240);
        NumberField rejects =
                field(stage, "rejects", standard.rejects().hundredths().doubleValue(), 95);
        NumberField[] all = {setUp, perPuzzle, perPiece, rest, rejects};
        Double[] shown = Arrays.stream(all).map(NumberField::getValue).toArray(Double[]::new);
        for (NumberField field : all) {
            field.addValueChangeListener(event -> {
                for (NumberField each : all) {
                    if (each.getValue() == null || each.isInvalid()) {
                        return;
                    }
                }
                Feedback.unlessRefused(
                        figures,
                        "workshop.saved",
                        () -> workshop.save(new StageStandard(
                                standard.stage(),
                                // what nobody has typed stays to the last digit, not as it is shown
                                setUp.getValue().equals(shown[0]) ? standard.setUp() : Minutes.of(setUp.getValue()),
                                perPuzzle.getValue().equals(shown[1])
                                        ? standard.perPuzzle()
                                        : Minutes.of(perPuzzle.getValue()),
                                perPiece.getValue().equals(shown[2])
                                        ? standard.perPiece()
                                        : Minutes.ofSeconds(perPiece.getValue()),
                                rest.getValue().equals(shown[3])
                                        ? standard.rest()
                                        : Duration.ofMinutes(Math.round(rest.getValue() * 60)),
                                rejects.getValue().equals(shown[4])
                                        ? standard.rejects()
                                        : new Percent(BigDecimal.valueOf(rejects.getValue())
                                                .setScale(2, RoundingMode.HALF_UP)))));
            });
        }
        NativeTableRow row = new NativeTableRow(new NativeTableHeaderCell(stage));
        for (int i = 0; i < all.length; i++) {
            NativeTableCell cell = row.addDataCell();
            // on a phone the row is a card, and each number carries its column's title
            cell.getElement().setAttribute("data-label", getTranslation("workshop.standard." + COLUMNS[i]));
            cell.add(all[i]);
        }
        return row;
    }

    private NumberField field(String stage, String column, double value, double most) {
        NumberField field = new NumberField();
        field.setAriaLabel(stage + ", " + getTranslation("workshop.standard." + column));
        field.setMin(0);
        field.setMax(most);
        field.setWidth("6.5rem");
        field.setValue(Math.round(value * 100) / 100.0);
        field.setErrorMessage(getTranslation("workshop.standard.range", most));
        return field;
    }
}
