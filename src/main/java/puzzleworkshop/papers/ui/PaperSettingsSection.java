package puzzleworkshop.papers.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Image;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.PaperSettings;
import puzzleworkshop.papers.drawn.Logo;
import puzzleworkshop.workshop.ui.SetUpPart;
import puzzleworkshop.workshop.ui.SetUpSection;

/** What stands on quotes and invoices: tax number, bank, terms, days to pay, logo. */
@org.springframework.stereotype.Component
class PaperSettingsSection implements SetUpSection {

    private static final int PLACE = 60;

    private final Invoices invoices;
    private final Photos photos;
    private final Formatter figures;

    PaperSettingsSection(Invoices invoices, Photos photos, Formatter figures) {
        this.invoices = invoices;
        this.photos = photos;
        this.figures = figures;
    }

    @Override
    public int place() {
        return PLACE;
    }

    @Override
    public List<SetUpPart> parts() {
        return List.of(new SetUpPart("papers.settings", this::show));
    }

    private Component show() {
        PaperSettings now = invoices.settings();
        AtomicReference<byte[]> logo = new AtomicReference<>(now.logo());
        TextField tax = new TextField(figures.text("papers.settings.tax-number"), now.taxNumber(), "");
        IntegerField due = new IntegerField(figures.text("papers.settings.due"));
        due.setMin(0);
        due.setMax(365);
        due.setValue(now.dueDays());
        TextArea bank = area("papers.settings.bank", now.bank());
        TextArea quote = area("papers.settings.quote-terms", now.quoteTerms());
        TextArea invoice = area("papers.settings.invoice-terms", now.invoiceTerms());
        FormLayout form = new FormLayout();
        form.setAutoResponsive(true);
        form.setAutoRows(true);
        form.setExpandColumns(true);
        form.setExpandFields(true);
        form.add(tax, due, bank, quote, invoice);
        Button save = new Button(figures.text("papers.settings.save"), event -> {
            due.setInvalid(due.getValue() == null);
            if (due.getValue() != null) {
                Feedback.unlessRefused(
                        figures,
                        "papers.settings.saved",
                        () -> invoices.save(new PaperSettings(
                                tax.getValue(),
                                bank.getValue(),
                                quote.getValue(),
                                invoice.getValue(),
                                due.getValue(),
                                logo.get())));
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        PageSection section = new PageSection(
                figures.text("papers.settings"),
                new Paragraph(figures.text("papers.settings.lead")),
                form,
                logo(logo),
                save);
        return section;
    }

    private TextArea area(String key, String value) {
        TextArea area = new TextArea(figures.text(key), value, "");
        area.setMinRows(3);
        return area;
    }

    /** The logo as it is kept, or the word that there is none; a refused file leaves the one before. */
    private Component logo(AtomicReference<byte[]> logo) {
        Div shown = new Div();
        Button without = new Button(figures.text("papers.settings.logo.remove"));
        shown.addClassName("papers-logo");
        show(shown, without, logo.get());
        Paragraph complaint = new Paragraph();
        complaint.addClassName("pw-note");
        complaint.getElement().setAttribute("data-kind", "bad").setAttribute("role", "alert");
        complaint.setVisible(false);
        FileUpload upload = new FileUpload(
                        figures,
                        Logo.MOST_BYTES,
                        sentence -> {
                            complaint.setText(sentence);
                            complaint.setVisible(!sentence.isEmpty());
                        },
                        file -> {
                            byte[] kept = Logo.of(file, photos);
                            return () -> {
                                logo.set(kept);
                                show(shown, without, kept);
                            };
                        })
                .labelled(figures.text("papers.settings.logo.choose"), figures.text("papers.settings.logo.drop"));
        upload.setAcceptedMimeTypes("image/png", "image/jpeg");
        without.addClickListener(event -> {
            logo.set(new byte[0]);
            show(shown, without, logo.get());
        });
        without.addThemeVariants(ButtonVariant.TERTIARY);
        Div row = new Div(shown, upload, without);
        row.addClassNames("pw-row", "papers-logo-row");
        return new LogoBox(row, complaint);
    }

    /** Carries its own style sheet to the set-up page. */
    @StyleSheet("context://papers.css")
    private static final class LogoBox extends Div {

        private LogoBox(Component... parts) {
            super(parts);
            addClassName("pw-stack");
        }
    }

    private void show(Div shown, Button without, byte[] logo) {
        shown.removeAll();
        without.setVisible(logo.length > 0);
        if (logo.length == 0) {
            shown.add(new Span(figures.text("papers.settings.logo.none")));
            return;
        }
        Image image = new Image(
                DownloadHandler.fromInputStream(event ->
                        new DownloadResponse(new ByteArrayInputStream(logo), "logo.png", "image/png", logo.length)),
                figures.text("papers.settings.logo.there"));
        shown.add(image);
    }
}
