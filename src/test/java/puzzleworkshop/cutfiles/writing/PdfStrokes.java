package puzzleworkshop.cutfiles.writing;

import java.awt.Shape;
import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** What a page strokes, as PDFBox reads it: one shape for each stroke, in points from the lower left corner. */
public final class PdfStrokes extends PDFGraphicsStreamEngine {

    public static List<Shape> of(PDPage page) throws IOException {
        PdfStrokes engine = new PdfStrokes(page);
        engine.processPage(page);
        return engine.strokes;
    }

    private final java.awt.geom.Path2D.Double path = new java.awt.geom.Path2D.Double();
    private final List<Shape> strokes = new ArrayList<>();

    private PdfStrokes(PDPage page) {
        super(page);
    }

    @Override
    public void moveTo(float x, float y) {
        path.moveTo(x, y);
    }

    @Override
    public void lineTo(float x, float y) {
        path.lineTo(x, y);
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
        path.curveTo(x1, y1, x2, y2, x3, y3);
    }

    @Override
    public Point2D getCurrentPoint() {
        return path.getCurrentPoint();
    }

    @Override
    public void closePath() {
        path.closePath();
    }

    @Override
    public void endPath() {
        path.reset();
    }

    @Override
    public void strokePath() {
        strokes.add((Shape) path.clone());
        path.reset();
    }

    @Override
    public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
        throw new IllegalStateException("no rectangle was written");
    }

    @Override
    public void drawImage(PDImage image) {
        throw new IllegalStateException("no picture was written");
    }

    @Override
    public void clip(int rule) {}

    @Override
    public void fillPath(int rule) {
        throw new IllegalStateException("nothing was filled");
    }

    @Override
    public void fillAndStrokePath(int rule) {
        fillPath(rule);
    }

    @Override
    public void shadingFill(COSName name) {}
}
