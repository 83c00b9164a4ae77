package puzzleworkshop.artwork.rows;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.MemoryUsageSetting;
import org.apache.pdfbox.io.RandomAccessReadBufferedFile;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.rendering.PDFRenderer;
import puzzleworkshop.artwork.reading.ColourFacts;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.PictureFormat;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** The first page of a PDF as a picture: drawn at 300 pixels per inch of the page, fewer on large pages. */
public final class PdfPage {

    private static final double USUAL_PPI = 300;
    private static final double MOST_PIXELS = 24e6;
    private static final double POINTS_PER_INCH = 72;
    private static final long MOST_UNPACKED_BYTES = 1L << 30;

    private PdfPage() {}

    static ImageHeader firstLook(Path file) throws IOException {
        try (PDDocument document = open(file)) {
            int pages = document.getNumberOfPages();
            if (pages < 1) {
                throw new Refused("artwork.refused.damaged");
            }
            PDPage page = document.getPage(0);
            PDRectangle box = page.getCropBox();
            boolean turned = page.getRotation() % 180 != 0;
            double inchesAcross = (turned ? box.getHeight() : box.getWidth()) / POINTS_PER_INCH;
            double inchesDown = (turned ? box.getWidth() : box.getHeight()) / POINTS_PER_INCH;
            if (!(inchesAcross > 0.1 && inchesDown > 0.1 && inchesAcross < 500 && inchesDown < 500)) {
                throw new Refused("artwork.refused.damaged");
            }
            double ppi = Math.min(USUAL_PPI, Math.sqrt(MOST_PIXELS / (inchesAcross * inchesDown)));
            List<Sentence> notices = new ArrayList<>();
            if (pages > 1) {
                notices.add(Sentence.of("artwork.notice.first-page", pages));
            }
            notices.add(Sentence.of("artwork.notice.pdf-drawn", Math.round(ppi)));
            ColourFacts colours = new ColourFacts(ColourFacts.Model.RGB, 8, false, Optional.empty());
            return new ImageHeader(
                    PictureFormat.PDF,
                    (int) Math.max(1, Math.floor(inchesAcross * ppi)),
                    (int) Math.max(1, Math.floor(inchesDown * ppi)),
                    1,
                    colours,
                    Optional.empty(),
                    Optional.empty(),
                    notices);
        } catch (InvalidPasswordException locked) {
            throw new Refused("artwork.refused.locked-pdf");
        } catch (IOException | RuntimeException | StackOverflowError broken) {
            if (broken instanceof Refused said) {
                throw said;
            }
            throw new Refused("artwork.refused.damaged");
        }
    }

    public static void draw(Path file, ImageHeader facts, DecodedRowSink spout) throws IOException {
        try (PDDocument document = open(file)) {
            PDFRenderer renderer = new PDFRenderer(document);
            renderer.setSubsamplingAllowed(true);
            PDPage page = document.getPage(0);
            PDRectangle box = page.getCropBox();
            double across = page.getRotation() % 180 != 0 ? box.getHeight() : box.getWidth();
            float scale = (float) (facts.storedWidth() / across);
            spout.openScreenColours();
            // In one piece: a page drawn by strips is interpreted once for each.
            BufferedImage drawn =
                    new BufferedImage(facts.storedWidth(), facts.storedHeight(), BufferedImage.TYPE_INT_RGB);
            Graphics2D g = drawn.createGraphics();
            g.setBackground(Color.WHITE);
            g.clearRect(0, 0, drawn.getWidth(), drawn.getHeight());
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
            renderer.renderPageToGraphics(0, g, scale);
            g.dispose();
            StripRows.pourPacked(drawn, 0, spout);
        }
    }

    /** What a page unpacks goes to a temporary file, and only so much of it: a few kilobytes can hold gigabytes. */
    private static PDDocument open(Path file) throws IOException {
        return Loader.loadPDF(
                new RandomAccessReadBufferedFile(file.toFile()),
                MemoryUsageSetting.setupTempFileOnly(MOST_UNPACKED_BYTES).streamCache);
    }
}
