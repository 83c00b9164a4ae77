package puzzleworkshop.papers.ticket;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Optional;
import org.openpdf.text.Document;
import org.openpdf.text.Element;
import org.openpdf.text.Image;
import org.openpdf.text.PageSize;
import org.openpdf.text.Paragraph;
import org.openpdf.text.Phrase;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfPCell;
import org.openpdf.text.pdf.PdfPTable;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.bench.Checklist;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.cutfiles.writing.GcodeFile;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PaperFonts;
import puzzleworkshop.display.QrCode;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.Tray;
import puzzleworkshop.placing.given.GivenFile;

/** Sets the job ticket on the page. */
final class JobTicketPdf {

    private static final float SIDE = 40;
    private static final float TEXT = 9;
    private static final float SMALL = 7.5f;
    private static final float QR = 66;
    private static final int MOST_FILES = 3;
    /** The ticket is to stay on one page. */
    private static final float HIGHEST_BOARD = 92;

    private static final float HIGHEST_OF_SEVERAL = 48;

    private final Order order;
    private final byte[] face;
    private final List<JobTicket.Board> boards;
    private final Optional<CutSetting> setting;
    private final List<GivenFile> given;
    private final List<Checklist.Line> handOver;
    private final String address;
    private final Formatter figures;

    JobTicketPdf(
            Order order,
            byte[] face,
            List<JobTicket.Board> boards,
            Optional<CutSetting> setting,
            List<GivenFile> given,
            List<Checklist.Line> handOver,
            String address,
            Formatter figures) {
        this.order = order;
        this.face = face;
        this.boards = boards;
        this.setting = setting;
        this.given = given;
        this.handOver = handOver;
        this.address = address;
        this.figures = figures;
    }

    byte[] write() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Rectangle page = figures.units() == UnitSystem.INCHES ? PageSize.LETTER : PageSize.A4;
        Document document = new Document(page, SIDE, SIDE, 26, 22);
        PdfWriter writer = PdfWriter.getInstance(document, out);
        document.addTitle(figures.text("papers.ticket.title", order.number()));
        document.addCreator("Puzzle Workshop");
        document.open();
        document.add(head(writer));
        document.add(puzzle());
        boards.forEach(board -> document.add(board(writer, board)));
        document.add(TicketStages.table(handOver, figures));
        cutFiles(document);
        Paragraph defer = new Paragraph(figures.text("bench.defer"), PaperFonts.soft(SMALL));
        defer.setSpacingBefore(3);
        document.add(defer);
        document.close();
        return out.toByteArray();
    }

    /** Which cut files were given out with which setting: the newest ones, the rest stands with the cut. */
    private void cutFiles(Document document) {
        List<GivenFile> cuts = given.stream()
                .filter(file -> file.purpose() == GcodeFile.Purpose.CUT)
                .toList();
        for (GivenFile file : cuts.subList(Math.max(0, cuts.size() - MOST_FILES), cuts.size())) {
            Paragraph line = new Paragraph(
                    figures.text(
                            "papers.ticket.given",
                            file.name(),
                            file.setting(),
                            figures.moment(file.at()),
                            file.shortDigest()),
                    PaperFonts.plain(SMALL));
            line.setSpacingBefore(2);
            document.add(line);
        }
    }

    private PdfPTable head(PdfWriter writer) {
        PdfPTable head = TicketCells.table(7, 2);
        PdfPCell words = TicketCells.bare();
        words.addElement(new Paragraph(order.number(), PaperFonts.accent(24)));
        Paragraph who = new Paragraph(order.customer().name(), PaperFonts.bold(13));
        who.setSpacingBefore(2);
        words.addElement(who);
        words.addElement(new Paragraph(
                order.promised()
                        .map(day -> figures.text(order.rush() ? "papers.ticket.due-rush" : "papers.ticket.due", day))
                        .orElse(""),
                PaperFonts.plain(11)));
        if (!order.note().isBlank()) {
            words.addElement(new Paragraph(order.note(), PaperFonts.plain(TEXT)));
        }
        head.addCell(words);
        PdfPCell code = TicketCells.bare();
        Image qr = qr(writer);
        qr.setAlignment(Element.ALIGN_RIGHT);
        code.addElement(qr);
        head.addCell(code);
        return head;
    }

    private PdfPTable puzzle() {
        PdfPTable row = TicketCells.table(10, 9);
        row.setSpacingBefore(6);
        PdfPCell picture = TicketCells.bare();
        picture.addElement(TicketCells.scaled(TicketCells.image(face), 255, 170));
        row.addCell(picture);
        PdfPTable facts = TicketCells.table(4, 7);
        fact(facts, "orders.fact.size", figures.size(order.puzzle().finished()));
        fact(
                facts,
                "orders.fact.pieces",
                figures.text(
                        "orders.pieces",
                        order.puzzle().pieces(),
                        order.puzzle().pattern().grid().columns(),
                        order.puzzle().pattern().grid().rows()));
        fact(facts, "orders.fact.quantity", String.valueOf(order.quantity()));
        fact(
                facts,
                "orders.fact.style",
                figures.text("orders.style." + order.puzzle().pattern().style().name()));
        PuzzleEdge.Kind edge = order.puzzle().pattern().outline().kind();
        if (edge != PuzzleEdge.Kind.SQUARE) {
            fact(facts, "orders.fact.edge", figures.text("orders.edge." + edge.name()));
        }
        for (PersonalShape shape : order.puzzle().pattern().shapes()) {
            fact(facts, "orders.fact.shape", shape.name());
        }
        fact(facts, "orders.fact.seed", String.valueOf(order.puzzle().pattern().seed()));
        fact(
                facts,
                "orders.fact.age",
                figures.text("orders.age." + order.puzzle().age().name()));
        if (order.puzzle().tray()) {
            fact(
                    facts,
                    "papers.ticket.tray",
                    figures.size(Tray.of(order.puzzle().pattern()).outerSize()));
        }
        setting.ifPresent(s -> {
            fact(facts, "papers.ticket.machine", s.machine().name());
            fact(facts, "papers.ticket.speed", figures.speed(s.speed()));
            fact(
                    facts,
                    "papers.ticket.power",
                    figures.text(
                            "papers.ticket.power.value",
                            s.parameters().power(),
                            s.passes(),
                            s.parameters().gap()));
            fact(
                    facts,
                    "papers.ticket.air",
                    figures.text(s.parameters().airAssist() ? "papers.ticket.yes" : "papers.ticket.no"));
            fact(facts, "papers.ticket.state", figures.text(s.state().textKey()));
            fact(facts, "papers.ticket.laser", figures.minutes(order.laser()));
        });
        PdfPCell right = TicketCells.bare();
        right.addElement(facts);
        row.addCell(right);
        return row;
    }

    private PdfPTable board(PdfWriter writer, JobTicket.Board board) {
        PdfPTable row = TicketCells.table(10, 9);
        row.setSpacingBefore(8);
        PdfPCell drawing = TicketCells.bare();
        drawing.addElement(new TicketBoard(board, figures)
                .draw(writer, 250, boards.size() > 1 ? HIGHEST_OF_SEVERAL : HIGHEST_BOARD));
        row.addCell(drawing);
        PdfPCell words = TicketCells.bare();
        String where = board.sheet()
                .map(sheet -> sheet.facts().place().isBlank()
                        ? figures.text("orders.sheet", String.valueOf(sheet.id().value()))
                        : figures.text(
                                "orders.sheet-at",
                                String.valueOf(sheet.id().value()),
                                sheet.facts().place()))
                .orElse(figures.text("papers.ticket.to-buy"));
        words.addElement(new Paragraph(where, PaperFonts.bold(12)));
        words.addElement(
                new Paragraph(figures.text("papers.ticket.blank", board.block().size()), PaperFonts.plain(TEXT)));
        if (board.block().count() > 1 || board.block().part() == BlankPlan.Part.TRAY) {
            words.addElement(new Paragraph(
                    figures.text(
                            board.block().part().textKey(),
                            board.block().count(),
                            board.block().across(),
                            board.block().down()),
                    PaperFonts.plain(TEXT)));
        }
        board.sheet().ifPresent(sheet -> {
            words.addElement(new Paragraph(
                    figures.text(
                            "papers.ticket.thickness",
                            sheet.facts().thickness(),
                            sheet.facts().bow()),
                    PaperFonts.plain(TEXT)));
            if (!sheet.facts().note().isBlank()) {
                words.addElement(new Paragraph(sheet.facts().note(), PaperFonts.soft(TEXT)));
            }
        });
        row.addCell(words);
        return row;
    }

    private Image qr(PdfWriter writer) {
        PdfTemplate template = writer.getDirectContent().createTemplate(QR, QR);
        QrCode.of(address, 0).draw(template, 0, 0, QR, PaperFonts.INK);
        return Image.getInstance(template);
    }

    private void fact(PdfPTable facts, String key, String value) {
        PdfPCell name = TicketCells.bare();
        name.setPaddingBottom(2.5f);
        name.setPhrase(new Phrase(figures.text(key), PaperFonts.soft(TEXT - 0.5f)));
        PdfPCell said = TicketCells.bare();
        said.setPaddingBottom(2.5f);
        said.setPhrase(new Phrase(value, PaperFonts.plain(TEXT)));
        facts.addCell(name);
        facts.addCell(said);
    }
}
