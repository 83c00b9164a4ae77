package puzzleworkshop.sheets.ui.photo;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.AttachmentType;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.camera.sheet.SheetPaper;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.MeasuredOutlines.Printer;
import puzzleworkshop.workshop.SignedIn;

/** The measuring sheet to print, and which printer it came from: each printer's 100 mm line is held to a ruler once. */
@StyleSheet("context://sheets.css")
public class PrintedSheet extends Div {

    private final transient Formatter figures;
    private final transient MeasuredOutlines measured;
    private final transient SignedIn who;
    private final ComboBox<String> printer = new ComboBox<>();
    private final LengthField line;
    private final Details details = new Details();
    private final Button right;
    private final Paragraph first;
    private transient Printer chosen;
    private UI screen;

    public PrintedSheet(Formatter figures, MeasuredOutlines measured, SignedIn who) {
        this.figures = figures;
        this.measured = measured;
        this.who = who;
        line = new LengthField(figures.text("sheets.photo.line"), figures.units());
        first = new Paragraph(figures.text("sheets.photo.line.first"));
        right = new Button(figures.text("sheets.photo.line.confirm"), event -> confirm());
        printer.setLabel(figures.text("sheets.photo.printer"));
        printer.setAllowCustomValue(true);
        printer.addCustomValueSetListener(event -> {
            printer.setValue(event.getDetail());
            choose(event.getDetail());
        });
        printer.addValueChangeListener(event -> {
            if (event.isFromClient()) {
                choose(event.getValue());
            }
        });
        Div fields = new Div(printer, line, right);
        fields.addClassName("pw-row");
        Div inside = new Div(papers(), first, fields);
        inside.addClassName("pw-stack");
        details.add(inside);
        addClassName("sheets-printed");
        add(details);
        chosen = measured.printers().stream().findFirst().orElse(null);
        details.setOpened(chosen == null);
        show();
    }

    private Div papers() {
        Div papers = new Div(new Span(figures.text("sheets.photo.print")));
        papers.addClassNames("pw-row", "sheets-papers");
        for (MeasuringSheet sheet : MeasuringSheet.values()) {
            papers.add(paper(sheet, false));
        }
        papers.add(paper(MeasuringSheet.CARDS, true));
        return papers;
    }

    private Anchor paper(MeasuringSheet sheet, boolean onLetter) {
        String key = "sheets.photo.paper." + sheet.name().toLowerCase(Locale.ROOT) + (onLetter ? ".letter" : "");
        String name = figures.text(key);
        Anchor link = new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    byte[] pdf = SheetPaper.pdf(
                            sheet, name, List.of(figures.text("sheets.photo.paper.line"), name), onLetter);
                    return new DownloadResponse(
                            new ByteArrayInputStream(pdf), "measuring-sheet.pdf", "application/pdf", pdf.length);
                }),
                AttachmentType.DOWNLOAD,
                name);
        link.setRouterIgnore(true);
        return link;
    }

    private void choose(String name) {
        Optional<Printer> known = measured.printers().stream()
                .filter(each -> name != null && each.name().equalsIgnoreCase(name.strip()))
                .findFirst();
        chosen = known.orElse(null);
        show(name == null ? "" : name);
    }

    private void confirm() {
        String name = printer.getValue() == null ? "" : printer.getValue();
        Feedback.unlessRefused(figures, "sheets.photo.line.confirmed", () -> {
            chosen = measured.confirmPrint(name, line.getValue(), who.name());
            details.setOpened(false);
            show();
        });
    }

    private void show() {
        show(chosen == null ? "" : chosen.name());
    }

    /** The line is asked until it is confirmed, then only told. */
    private void show(String name) {
        List<String> names = new java.util.ArrayList<>(
                measured.printers().stream().map(Printer::name).toList());
        if (names.stream().noneMatch(name::equals)) {
            names.add(name);
        }
        printer.setItems(names);
        printer.setItemLabelGenerator(each -> each.isEmpty() ? figures.text("sheets.photo.printer.unnamed") : each);
        printer.setValue(name);
        line.setValue(chosen == null ? Length.mm(MeasuringSheet.LINE) : chosen.line());
        first.setVisible(chosen == null);
        right.setThemeVariant(ButtonVariant.PRIMARY, chosen == null);
        details.setSummaryText(
                chosen == null
                        ? figures.text("sheets.photo.sheet")
                        : figures.text(
                                "sheets.photo.sheet.of",
                                name.isEmpty() ? figures.text("sheets.photo.printer.unnamed") : name,
                                chosen.line()));
    }

    /**
     * By how much the chosen printer changes sizes. May be asked from another thread than the screen's.
     *
     * @throws Refused while its line was not held to a ruler
     */
    public double scale() {
        Printer[] now = new Printer[1];
        if (screen == null || screen.getSession() == null || screen.getSession().hasLock()) {
            now[0] = chosen;
        } else {
            screen.accessSynchronously(() -> now[0] = chosen);
        }
        if (now[0] == null) {
            throw new Refused("sheets.photo.line.first");
        }
        return now[0].scale();
    }

    @Override
    protected void onAttach(AttachEvent event) {
        super.onAttach(event);
        screen = event.getUI();
    }
}
