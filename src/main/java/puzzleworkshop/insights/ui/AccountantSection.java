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
import java.util.List;
import puzzleworkshop.display.Texts;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.papers.AccountantCsv;

/** Two files for a period: the lines of all papers, and the payments. */
class AccountantSection extends Div {

    /** Writes one file for a period. */
    @FunctionalInterface
    private interface Period {
        void write(LocalDate from, LocalDate to, Writer out);
    }

    private final DayField from;
    private final DayField to;
    private final List<Anchor> files;
    private final Paragraph why = new Paragraph();

    AccountantSection(AccountantCsv csv, LocalDate today) {
        addClassName("pw-section");
        LocalDate lastMonth = today.minusMonths(1);
        from = new DayField(getTranslation("insights.accountant.from"), lastMonth.withDayOfMonth(1));
        to = new DayField(getTranslation("insights.accountant.to"), today);
        from.setLocale(Texts.LOCALE);
        to.setLocale(Texts.LOCALE);
        files = List.of(
                file("insights.accountant.papers", "papers", csv::papers),
                file("insights.accountant.payments", "payments", csv::payments));
        why.addClassName("pw-small");
        why.getElement().setAttribute("role", "status");
        for (DayField day : List.of(from, to)) {
            day.addValueChangeListener(event -> offer());
        }
        offer();
        Div row = new Div(from, to);
        files.forEach(row::add);
        row.add(why);
        row.addClassNames("pw-row", "insights-accountant");
        add(
                new H2(getTranslation("insights.accountant")),
                new Paragraph(getTranslation("insights.accountant.lead")),
                row);
    }

    /** Files only for a period that can be read: no day is taken for another. */
    private void offer() {
        String wrong = "";
        if (from.getValue() == null || to.getValue() == null) {
            wrong = getTranslation("insights.accountant.days");
        } else if (from.getValue().isAfter(to.getValue())) {
            wrong = getTranslation("insights.accountant.order");
        }
        boolean readable = wrong.isEmpty();
        files.forEach(file -> file.setVisible(readable));
        why.setText(wrong);
        why.setVisible(!readable);
    }

    private Anchor file(String key, String name, Period period) {
        return new Anchor(
                DownloadHandler.fromInputStream(event -> {
                    LocalDate first = from.getValue();
                    LocalDate last = to.getValue();
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
