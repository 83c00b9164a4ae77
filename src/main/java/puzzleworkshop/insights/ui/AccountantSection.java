package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import puzzleworkshop.display.DayField;
import puzzleworkshop.display.Texts;
import puzzleworkshop.papers.AccountantCsv;

/** Two files for a period: the lines of all papers, and the payments. */
class AccountantSection extends Div {

    /** Writes one file for a period. */
    @FunctionalInterface
    private interface Period {
        void write(LocalDate from, LocalDate to, Writer out);
    }

    private final transient LocalDate today;
    private final DayField from;
    private final DayField to;

    AccountantSection(AccountantCsv csv, LocalDate today) {
        this.today = today;
        addClassName("pw-section");
        LocalDate lastMonth = today.minusMonths(1);
        from = new DayField(getTranslation("insights.accountant.from"), lastMonth.withDayOfMonth(1));
        to = new DayField(getTranslation("insights.accountant.to"), today);
        from.setLocale(Texts.LOCALE);
        to.setLocale(Texts.LOCALE);
        Div row = new Div(
                from,
                to,
                file("insights.accountant.papers", "papers", csv::papers),
                file("insights.accountant.payments", "payments", csv::payments));
        row.addClassNames("pw-row", "insights-accountant");
        add(
                new H2(getTranslation("insights.accountant")),
                new Paragraph(getTranslation("insights.accountant.lead")),
                row);
    }

    private Anchor file(String key, String name, Period period) {
        return new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    LocalDate first = from.getValue() == null ? LocalDate.EPOCH : from.getValue();
                    LocalDate last = to.getValue() == null ? today : to.getValue();
                    StringWriter out = new StringWriter();
                    period.write(first, last, out);
                    byte[] bytes = out.toString().getBytes(StandardCharsets.UTF_8);
                    return new DownloadResponse(
                            new ByteArrayInputStream(bytes),
                            name + "-" + first + "-" + last + ".csv",
                            "text/csv; charset=utf-8",
                            bytes.length);
                }),
                getTranslation(key));
    }
}
