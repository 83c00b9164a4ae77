package puzzleworkshop.papers.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.component.upload.Upload;
import com.vaadin.flow.server.streams.UploadHandler;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.concurrent.atomic.AtomicReference;
import javax.imageio.ImageIO;
import puzzleworkshop.display.Figures;
import puzzleworkshop.display.Saved;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.papers.PaperSettings;
import puzzleworkshop.workshop.ui.SetUpSection;

/** What stands on quotes and invoices: tax number, bank, terms, days to pay, logo. */
@org.springframework.stereotype.Component
class PaperSettingsSection implements SetUpSection {

    private static final int PLACE = 60;
    private static final int MOST_BYTES = 1_000_000;

    private final Invoices invoices;
    private final Figures figures;

    PaperSettingsSection(Invoices invoices, Figures figures) {
        this.invoices = invoices;
        this.figures = figures;
    }

    @Override
    public int place() {
        return PLACE;
    }

    @Override
    public Component show() {
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
                Saved.unlessRefused(figures, "papers.settings.saved", () -> invoices.save(new PaperSettings(
                        tax.getValue(), bank.getValue(), quote.getValue(), invoice.getValue(), due.getValue(), logo.get())));
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        Div section = new Div(
                new H2(figures.text("papers.settings")), new Paragraph(figures.text("papers.settings.lead")), form,
                logo(logo), save);
        section.addClassName("pw-section");
        return section;
    }

    private TextArea area(String key, String value) {
        TextArea area = new TextArea(figures.text(key), value, "");
        area.setMinRows(3);
        return area;
    }

    private Component logo(AtomicReference<byte[]> logo) {
        Span state = new Span();
        Runnable tell = () -> state.setText(
                figures.text(logo.get().length > 0 ? "papers.settings.logo.there" : "papers.settings.logo.none"));
        tell.run();
        Upload upload = new Upload(UploadHandler.inMemory((metadata, bytes) -> {
            if (isPicture(bytes)) {
                logo.set(bytes);
                tell.run();
            } else {
                Saved.tell(figures.text("papers.settings.logo"), true);
            }
        }));
        upload.setMaxFiles(1);
        upload.setAcceptedMimeTypes("image/png", "image/jpeg");
        upload.setMaxFileSize(MOST_BYTES);
        Button without = new Button(figures.text("papers.settings.logo.remove"), event -> {
            logo.set(new byte[0]);
            tell.run();
        });
        without.addThemeVariants(ButtonVariant.TERTIARY);
        Div row = new Div(state, upload, without);
        row.addClassName("pw-row");
        return row;
    }

    private static boolean isPicture(byte[] bytes) {
        try {
            return bytes.length <= MOST_BYTES && ImageIO.read(new ByteArrayInputStream(bytes)) != null;
        } catch (IOException broken) {
            return false;
        }
    }
}
