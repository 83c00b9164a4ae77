package puzzleworkshop.printing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.DrawObject;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.OperatorName;
import org.apache.pdfbox.contentstream.operator.state.Concatenate;
import org.apache.pdfbox.contentstream.operator.state.Restore;
import org.apache.pdfbox.contentstream.operator.state.Save;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.util.Matrix;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.PrintPicture;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.crosses.Crosses;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.printing.pdf.SheetMarks;
import puzzleworkshop.printing.pdf.SheetPdf;
import puzzleworkshop.support.ReadPaper;

/** The PDF is read back with PDFBox and drawn with PDFBox and, where it is installed, with Poppler's pdftoppm. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SheetPdfTest {

    private static final double PT = 72 / 25.4;
    private static final double PPI = 200;
    private static final Color[] CORNERS = {Color.RED, Color.GREEN, Color.BLUE, Color.YELLOW};

    /** ISO 216 and ISO 32000-1: an A3 sheet of 297 × 420 mm is 841.890 × 1190.551 pt; units of 1/72 in. */
    @Test
    void the_page_is_the_sheet_and_trim_lies_in_bleed_lies_in_media() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(write(twoOnA3()))) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            PDPage page = pdf.getPage(0);
            assertBox(page.getMediaBox(), 0, 0, 841.890, 1190.551);
            // Upright print at 6, 6: sticker 126 × 96; turned print at 6, 120: its band of 8 mm to the left, sticker 96
            // × 126.
            assertBox(page.getBleedBox(), 6 * PT, (420 - 246) * PT, 132 * PT, (420 - 6) * PT);
            assertBox(page.getTrimBox(), 9 * PT, (420 - 243) * PT, 129 * PT, (420 - 9) * PT);
        }
    }

    /** Both prints of the sheet, upright at 6, 6 and turned at 6, 120: sticker 126 × 96, overhang 3, crosses 1.5 out. */
    @Test
    void crosses_stand_in_the_corners_of_the_overhang_to_a_twentieth_of_a_millimetre() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(write(twoOnA3()))) {
            int dpi = 1200;
            BufferedImage page = new PDFRenderer(pdf).renderImageWithDPI(0, dpi);
            double mm = dpi / 25.4;
            double[][] middles = {
                {6 + 1.5, 6 + 1.5}, {6 + 124.5, 6 + 1.5}, {6 + 124.5, 6 + 94.5}, {6 + 1.5, 6 + 94.5},
                {14 + 1.5, 120 + 1.5}, {14 + 94.5, 120 + 1.5}, {14 + 94.5, 120 + 124.5}, {14 + 1.5, 120 + 124.5}
            };
            for (double[] middle : middles) {
                // dark pixels beside the crossing give the middle of the upright and of the level line
                double x = darkMiddle(page, middle[0] * mm, (middle[1] - 0.6) * mm, true);
                double y = darkMiddle(page, (middle[0] - 0.6) * mm, middle[1] * mm, false);
                assertThat(x / mm).isEqualTo(middle[0], within(0.05));
                assertThat(y / mm).isEqualTo(middle[1], within(0.05));
            }
        }
    }

    private static double darkMiddle(BufferedImage page, double x, double y, boolean across) {
        double sum = 0;
        int dark = 0;
        for (int d = -25; d <= 25; d++) {
            int px = (int) Math.floor(across ? x + d : x);
            int py = (int) Math.floor(across ? y : y + d);
            int rgb = page.getRGB(px, py);
            if ((rgb >> 16 & 255) < 60 && (rgb >> 8 & 255) < 60 && (rgb & 255) < 60) {
                sum += across ? px + 0.5 : py + 0.5;
                dark++;
            }
        }
        assertThat(dark).as("dark pixels").isBetween(4, 12);
        return sum / dark;
    }

    @Test
    void pictures_lie_where_they_were_planned_to_a_twentieth_of_a_millimetre() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(write(twoOnA3()))) {
            List<Matrix> placed = placements(pdf.getPage(0));
            assertThat(placed).hasSize(2);
            double spare = (pixels(126) / PPI * 25.4 - 126) / 2;
            Matrix upright = placed.get(0);
            assertMm(upright.getTranslateX(), 6 - spare);
            assertMm(upright.getTranslateY(), 420 - 6 - 96 - spareOf(96));
            assertMm(upright.getScaleX(), pixels(126) / PPI * 25.4);
            assertThat(upright.getShearX()).isZero();
            Matrix turned = placed.get(1);
            // Turned clockwise: the picture's lower left corner comes to the upper left of where it lies.
            assertMm(turned.getTranslateX(), 6 + 8 - spareOf(96));
            assertMm(turned.getTranslateY(), 420 - 120 + spare);
            assertMm(turned.getScaleX(), 0);
        }
    }

    @Test
    void a_picture_used_twice_is_written_once_at_its_own_resolution_with_sRGB() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(write(twoOnA3()))) {
            List<PDImageXObject> images = images(pdf);
            assertThat(images).hasSize(1);
            PDImageXObject image = images.getFirst();
            assertThat(image.getWidth()).isEqualTo(pixels(126));
            assertThat(image.getHeight()).isEqualTo(pixels(96));
            double printedInches = placements(pdf.getPage(0)).getFirst().getScaleX() / 72;
            assertThat(image.getWidth() / printedInches).as("effective ppi").isEqualTo(PPI, within(0.1));
            assertThat(image.getColorSpace().getName()).isEqualTo("ICCBased");
            assertThat(pdf.getDocumentCatalog().getOutputIntents()).hasSize(1);
            assertThat(pdf.getDocumentCatalog().getOutputIntents().getFirst().getOutputConditionIdentifier())
                    .isEqualTo("sRGB IEC61966-2.1");
            assertThat(ReadPaper.text(write(twoOnA3()))).contains("2026-0147", ReadPaper.MANY_LETTERS);
        }
    }

    @Test
    void drawn_by_PDFBox_the_corners_show_the_corners_of_the_picture() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(write(twoOnA3()))) {
            assertCorners(new PDFRenderer(pdf).renderImageWithDPI(0, 100), 100);
        }
    }

    @Test
    void drawn_by_Poppler_the_corners_show_the_corners_of_the_picture(@TempDir Path folder) throws Exception {
        Path pdf = folder.resolve("run.pdf");
        Files.write(pdf, write(twoOnA3()));
        Process poppler;
        try {
            poppler = new ProcessBuilder(
                            "pdftoppm",
                            "-r",
                            "100",
                            "-png",
                            "-singlefile",
                            pdf.toString(),
                            folder.resolve("page").toString())
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException notInstalled) {
            org.junit.jupiter.api.Assumptions.abort("pdftoppm is not installed");
            return;
        }
        assertThat(poppler.waitFor(60, TimeUnit.SECONDS)).isTrue();
        assertCorners(ImageIO.read(new File(folder.toFile(), "page.png")), 100);
    }

    @Test
    void the_code_in_the_waste_holds_the_order_number() throws Exception {
        try (PDDocument pdf = Loader.loadPDF(write(twoOnA3()))) {
            BufferedImage page = new PDFRenderer(pdf).renderImageWithDPI(0, 600);
            assertThat(read(page, 6 + 3, 6 + 96, 11, 8)).isEqualTo("2026-0147");
            assertThat(read(page, 6, 120 + 2, 8, 12)).as("turned").isEqualTo("2026-0147");
        }
    }

    @Test
    void every_sheet_is_a_page_and_copies_on_other_sheets_share_the_picture() throws IOException {
        List<RunItem> items = new ArrayList<>();
        for (int sheet = 0; sheet < 3; sheet++) {
            items.add(item(sheet + 1, sheet, 6, 6, false));
        }
        try (PDDocument pdf = Loader.loadPDF(write(run(items, 3)))) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(3);
            assertThat(images(pdf)).hasSize(1);
        }
    }

    private static String read(BufferedImage page, double x, double y, double w, double h) throws Exception {
        double px = 600 / 25.4;
        BufferedImage part = page.getSubimage((int) (x * px), (int) (y * px), (int) (w * px), (int) (h * px));
        BufferedImage framed =
                new BufferedImage(part.getWidth() + 80, part.getHeight() + 80, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = framed.createGraphics();
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, framed.getWidth(), framed.getHeight());
        g.drawImage(part, 40, 40, null);
        g.dispose();
        var source = new com.google.zxing.client.j2se.BufferedImageLuminanceSource(framed);
        var bitmap = new com.google.zxing.BinaryBitmap(new com.google.zxing.common.HybridBinarizer(source));
        return new com.google.zxing.qrcode.QRCodeReader()
                .decode(bitmap, Map.of(com.google.zxing.DecodeHintType.TRY_HARDER, true))
                .getText();
    }

    private static void assertCorners(BufferedImage page, double dpi) {
        double px = dpi / 25.4;
        // 5 mm in, where no cross stands
        double[][] upright = {{11, 11}, {127, 11}, {11, 97}, {127, 97}};
        // Clockwise: upper left goes to upper right, lower left to upper left.
        double[][] turned = {{14 + 91, 125}, {14 + 91, 241}, {14 + 5, 125}, {14 + 5, 241}};
        for (int corner = 0; corner < 4; corner++) {
            for (double[] at : List.of(upright[corner], turned[corner])) {
                Color seen = new Color(page.getRGB((int) (at[0] * px), (int) (at[1] * px)));
                assertThat(distance(seen, CORNERS[corner]))
                        .as("corner " + corner + " at " + at[0] + ", " + at[1] + ": " + seen)
                        .isLessThan(40);
            }
        }
        Color waste = new Color(page.getRGB((int) (200 * px), (int) (300 * px)));
        assertThat(waste).isEqualTo(Color.WHITE);
    }

    private static double distance(Color a, Color b) {
        return Math.max(
                Math.abs(a.getRed() - b.getRed()),
                Math.max(Math.abs(a.getGreen() - b.getGreen()), Math.abs(a.getBlue() - b.getBlue())));
    }

    private static PrintRun twoOnA3() {
        return run(List.of(item(1, 0, 6, 6, false), item(2, 0, 6, 120, true)), 1);
    }

    static PrintRun run(List<RunItem> items, int sheets) {
        PrintMedium a3 = new PrintMedium(
                Optional.of(1L),
                "A3",
                PrintMedium.Kind.SHEET,
                Size.mm(297, 420),
                Length.mm(3),
                Length.mm(4),
                Optional.empty(),
                Optional.empty(),
                true);
        return new PrintRun(
                12,
                RunState.PROPOSED,
                a3,
                Optional.of(Crosses.USUAL),
                items,
                sheets,
                1,
                Length.mm(420),
                Length.ZERO,
                Instant.EPOCH,
                "Robin",
                Optional.empty(),
                0);
    }

    private static RunItem item(int copy, int sheet, double x, double y, boolean turned) {
        return new RunItem(
                copy,
                new OrderRef(new OrderId(7), "2026-0147"),
                copy,
                "",
                Size.mm(120, 90),
                Length.mm(3),
                Optional.of(LocalDate.of(2026, 12, 3)),
                sheet,
                Length.mm(x),
                Length.mm(y),
                turned,
                false,
                RunItem.Outcome.PLANNED,
                "");
    }

    private static byte[] write(PrintRun run) throws IOException {
        PrintItem waiting = new PrintItem(
                new OrderRef(new OrderId(7), "2026-0147"),
                2,
                Size.mm(120, 90),
                Length.mm(3),
                Optional.empty(),
                new PictureId(new UUID(1, 2)),
                new Crop(0, 0, 1, 1, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED));
        byte[] jpeg = picture(pixels(126), pixels(96));
        double w = pixels(126) / PPI * 25.4;
        double h = pixels(96) / PPI * 25.4;
        PrintPicture.Lay middle =
                new PrintPicture.Lay(63 - w / 2, 48 - h / 2, w, 0, 0, h, new PrintPicture.Box(0, 0, 126, 96));
        PrintPictures source = item -> new PrintPicture(
                Files.write(Files.createTempFile("sticker-", ".jpg"), jpeg),
                pixels(126),
                pixels(96),
                3,
                Optional.empty(),
                List.of(middle),
                OptionalInt.empty(),
                PPI,
                false);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Map<OrderId, PrintItem> items = new HashMap<>(Map.of(new OrderId(7), waiting));
        List<Double> told = new ArrayList<>();
        new SheetPdf(
                        run,
                        source,
                        new SheetMarks(
                                "Print run 12", item -> List.of(item.order().number(), ReadPaper.MANY_LETTERS)))
                .write(items, out, told::add);
        assertThat(told.getLast()).isEqualTo(1.0);
        return out.toByteArray();
    }

    /** Whole pixels that cover a length. */
    private static int pixels(double mm) {
        return (int) Math.ceil(mm / 25.4 * PPI);
    }

    private static double spareOf(double mm) {
        return (pixels(mm) / PPI * 25.4 - mm) / 2;
    }

    private static byte[] picture(int width, int height) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        for (int corner = 0; corner < 4; corner++) {
            g.setColor(CORNERS[corner]);
            g.fillRect(corner % 2 * width / 2, corner / 2 * height / 2, width / 2 + 1, height / 2 + 1);
        }
        g.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "jpg", out);
        return out.toByteArray();
    }

    private static void assertBox(PDRectangle box, double left, double lower, double right, double upper) {
        assertThat(box.getLowerLeftX()).isEqualTo((float) left, within(0.01f));
        assertThat(box.getLowerLeftY()).isEqualTo((float) lower, within(0.01f));
        assertThat(box.getUpperRightX()).isEqualTo((float) right, within(0.01f));
        assertThat(box.getUpperRightY()).isEqualTo((float) upper, within(0.01f));
    }

    private static void assertMm(float points, double mm) {
        assertThat(points / PT).isEqualTo(mm, within(0.05));
    }

    private static List<PDImageXObject> images(PDDocument pdf) throws IOException {
        Map<COSBase, PDImageXObject> found = new HashMap<>();
        for (PDPage page : pdf.getPages()) {
            for (COSName name : page.getResources().getXObjectNames()) {
                if (page.getResources().getXObject(name) instanceof PDImageXObject image) {
                    found.put(image.getCOSObject(), image);
                }
            }
        }
        return List.copyOf(found.values());
    }

    private static List<Matrix> placements(PDPage page) throws IOException {
        List<Matrix> found = new ArrayList<>();
        PDFStreamEngine engine = new PDFStreamEngine() {
            {
                addOperator(new Concatenate(this));
                addOperator(new Save(this));
                addOperator(new Restore(this));
                addOperator(new DrawObject(this));
            }

            @Override
            protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
                if (operator.getName().equals(OperatorName.DRAW_OBJECT)) {
                    found.add(
                            getGraphicsState().getCurrentTransformationMatrix().clone());
                } else {
                    super.processOperator(operator, operands);
                }
            }
        };
        engine.processPage(page);
        return found;
    }
}
