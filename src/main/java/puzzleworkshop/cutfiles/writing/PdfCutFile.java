package puzzleworkshop.cutfiles.writing;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Optional;
import org.openpdf.text.Document;
import org.openpdf.text.DocumentException;
import org.openpdf.text.Rectangle;
import org.openpdf.text.pdf.PdfContentByte;
import org.openpdf.text.pdf.PdfLayer;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;

/**
 * Writes a plan as a PDF of one page at real size (1/72 in a point, 25.4 mm an inch), hairlines, two layers; curves
 * stay curves, rounded to 0.0035 mm.
 */
final class PdfCutFile {

    static final String INNER = "Inner lines";
    static final String OUTLINE = "Outline";
    private static final double POINTS_PER_MM = 72 / 25.4;
    private static final double STROKE_MM = 0.1;

    private final PdfContentByte page;
    private final double bottom;
    private final Optional<MachinePage> bed;

    private PdfCutFile(PdfContentByte page, double bottom, Optional<MachinePage> bed) {
        this.bed = bed;
        this.page = page;
        this.bottom = bottom;
    }

    static byte[] bytes(CutPlan plan, Optional<MachinePage> bed) {
        Point corner = CutFile.corner(plan, bed);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Document document = new Document(new Rectangle(points(corner.xMm()), points(corner.yMm())), 0, 0, 0, 0);
        try {
            PdfWriter writer = PdfWriter.getInstance(document, bytes);
            writer.setPdfVersion(PdfWriter.VERSION_1_5);
            document.addTitle(CutFile.title(plan, bed));
            document.addSubject(CutFile.statement(plan, bed));
            document.open();
            PdfCutFile file = new PdfCutFile(writer.getDirectContent(), corner.yMm(), bed);
            boolean innerFirst = plan.sequence() == CutPlan.Sequence.INNER_FIRST;
            file.layer(writer, innerFirst ? INNER : OUTLINE, innerFirst ? plan.inner() : plan.outline());
            file.layer(writer, innerFirst ? OUTLINE : INNER, innerFirst ? plan.outline() : plan.inner());
            document.close();
        } catch (DocumentException failed) {
            throw new IllegalStateException("The cut file could not be written as PDF", failed);
        }
        return bytes.toByteArray();
    }

    private void layer(PdfWriter writer, String name, List<CurvePath> lines) {
        if (lines.isEmpty()) {
            return;
        }
        page.beginLayer(new PdfLayer(bed.map(of -> name + ", " + of.setting()).orElse(name), writer));
        page.setLineWidth(points(STROKE_MM));
        for (CurvePath line : lines) {
            page.moveTo(x(line.start()), y(line.start()));
            for (Segment segment : line.segments()) {
                switch (segment) {
                    case Segment.Line straight -> page.lineTo(x(straight.to()), y(straight.to()));
                    case Segment.Cubic c ->
                        page.curveTo(
                                x(c.control1()),
                                y(c.control1()),
                                x(c.control2()),
                                y(c.control2()),
                                x(c.to()),
                                y(c.to()));
                }
            }
            if (line.closed()) {
                page.closePathStroke();
            } else {
                page.stroke();
            }
        }
        page.endLayer();
    }

    private float x(Point p) {
        return points(p.xMm());
    }

    private float y(Point p) {
        return points(bottom - p.yMm());
    }

    private static float points(double mm) {
        return (float) (mm * POINTS_PER_MM);
    }
}
