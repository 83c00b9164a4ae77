package puzzleworkshop.planning;

import java.awt.Color;
import java.io.ByteArrayOutputStream;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.stream.Collectors;
import org.openpdf.text.Document;
import org.openpdf.text.Element;
import org.openpdf.text.Font;
import org.openpdf.text.PageSize;
import org.openpdf.text.Paragraph;
import org.openpdf.text.Phrase;
import org.openpdf.text.pdf.PdfPCell;
import org.openpdf.text.pdf.PdfPTable;
import org.openpdf.text.pdf.PdfWriter;
import org.springframework.stereotype.Service;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.calendar.IsoWeek;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** What is to be done on a day, in the order of the plan, to hang up at the bench: A4 with boxes to tick. */
@Service
public class TodaysList {

    private static final int MOST_DAYS_OFF = 28;
    private static final Color LINE = new Color(0xC9BEAE);

    private final WeekPlan plan;
    private final SheetRack rack;
    private final Workshop workshop;
    private final Formatter figures;

    TodaysList(WeekPlan plan, SheetRack rack, Workshop workshop, Formatter figures) {
        this.plan = plan;
        this.rack = rack;
        this.workshop = workshop;
        this.figures = figures;
    }

    /** The working day after today: what is hung up in the evening. */
    public LocalDate nextDay() {
        WeekPlan.Standing standing = plan.now();
        LocalDate day = standing.today().plusDays(1);
        LocalDate last = day.plusDays(MOST_DAYS_OFF);
        while (day.isBefore(last) && !standing.calendar().isWorkingDay(day)) {
            day = day.plusDays(1);
        }
        return day;
    }

    /** Of today, as a PDF file. */
    public byte[] pdf() {
        return pdf(plan.today());
    }

    /** Of any day, as a PDF file. */
    public byte[] pdf(LocalDate day) {
        WeekPlan.Standing standing = plan.now();
        List<Schedule.Work> work = standing.plan().work().stream()
                .filter(w -> w.start().toLocalDate().equals(day))
                .toList();
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        Document document = new Document(PageSize.A4, 42, 42, 42, 42);
        PdfWriter.getInstance(document, file);
        int which = day.equals(standing.today()) ? 0 : 1;
        document.addTitle(figures.text("planning.list.title", day, which));
        document.open();
        document.add(new Paragraph(figures.text("planning.list.title", day, which), PaperFonts.bold(18)));
        document.add(new Paragraph(
                workshop.profile().name() + " · " + IsoWeek.of(day) + " · "
                        + figures.text("planning.list.count", work.size()),
                PaperFonts.soft(10)));
        if (work.isEmpty()) {
            document.add(new Paragraph(figures.text("planning.list.empty"), PaperFonts.plain(12)));
        } else {
            document.add(table(standing, work));
        }
        Paragraph cautions = new Paragraph(figures.text("planning.list.cautions"), PaperFonts.soft(9));
        cautions.setSpacingBefore(14);
        document.add(cautions);
        document.close();
        return file.toByteArray();
    }

    private PdfPTable table(WeekPlan.Standing standing, List<Schedule.Work> work) {
        PdfPTable table = new PdfPTable(new float[] {4, 8, 17, 34, 25, 12});
        table.setWidthPercentage(100);
        table.setSpacingBefore(14);
        table.setHeaderRows(1);
        for (String column : List.of("done", "at", "stage", "order", "board", "who")) {
            table.addCell(cell(figures.text("planning.list." + column), PaperFonts.softBold(9)));
        }
        for (Schedule.Work w : work) {
            Order order = standing.of(new OrderId(w.job())).orElseThrow().order();
            PdfPCell box = cell(" ", PaperFonts.plain(11));
            box.setCellEvent((in, place, canvases) -> {
                var canvas = canvases[PdfPTable.LINECANVAS];
                canvas.setLineWidth(0.8f);
                canvas.rectangle(place.getLeft() + 2, place.getTop() - 18, 11, 11);
                canvas.stroke();
            });
            table.addCell(box);
            LocalTime at = w.start().toLocalTime();
            table.addCell(cell("%02d:%02d".formatted(at.getHour(), at.getMinute()), PaperFonts.plain(10)));
            table.addCell(cell(figures.text(w.stage().textKey()), PaperFonts.bold(11)));
            table.addCell(cell(
                    figures.text(
                            "planning.list.line",
                            order.number(),
                            order.customer().name(),
                            order.quantity(),
                            order.puzzle().finished(),
                            order.puzzle().pieces()),
                    PaperFonts.plain(10)));
            table.addCell(cell(board(w.stage(), order), PaperFonts.plain(10)));
            table.addCell(cell(w.by().orElse(""), PaperFonts.plain(10)));
        }
        return table;
    }

    private String board(Stage stage, Order order) {
        if (stage.compareTo(Stage.SHEET_PREP) < 0 || stage.compareTo(Stage.CUT) > 0) {
            return "";
        }
        return rack.heldFor(order.id()).stream()
                .map(sheet -> figures.text(
                        "planning.list.sheet", sheet.id().value(), sheet.facts().place()))
                .collect(Collectors.joining(", "));
    }

    private static PdfPCell cell(String text, Font font) {
        PdfPCell cell = new PdfPCell(new Phrase(text, font));
        cell.setBorder(PdfPCell.BOTTOM);
        cell.setBorderColor(LINE);
        cell.setVerticalAlignment(Element.ALIGN_MIDDLE);
        cell.setMinimumHeight(24);
        return cell;
    }
}
