package puzzleworkshop.delivery.labels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.multi.GenericMultipleBarcodeReader;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.DrawObject;
import org.apache.pdfbox.contentstream.operator.state.Concatenate;
import org.apache.pdfbox.contentstream.operator.state.Restore;
import org.apache.pdfbox.contentstream.operator.state.Save;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.util.Matrix;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.openpdf.text.Document;
import org.openpdf.text.pdf.PdfTemplate;
import org.openpdf.text.pdf.PdfWriter;
import puzzleworkshop.measure.Refused;

/** Label sheets read back with PDFBox and ZXing, as a printer and a scanner would. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LabelPagesTest {

    private static final double MM_A_POINT = 25.4 / 72;
    private static final String WARNING = "WARNING! Not for children under 3 years. Small parts. Choking hazard.";

    /** Where a label lies on its page, from the upper left corner. */
    private record Place(int page, double left, double top, double width, double height) {}

    /**
     * Sizes and margins in millimetres, which several makers of label sheets share. Read in published templates of label
     * sheets: A4 with 8 of 99.1 × 67.7 (pitch 101.6 × 67.7, margins 4.65 and 13.1), A4 columns of 63.5 (pitch 66, margin
     * 7.25), Letter with 30 of 2.625 × 1 in (margins 0.1875 and 0.5, pitch 2.75). The other lines from memory; A4 and Letter
     * are ISO 216 and ANSI/ASME Y14.1.
     */
    @ParameterizedTest
    @CsvSource({
        "A4_3_X_8, 24, 70, 37, 0, 0.5, 140, 259.5",
        "A4_3_X_7, 21, 63.5, 38.1, 7.25, 15.15, 139.25, 243.75",
        "A4_2_X_4, 8, 99.1, 67.7, 4.65, 13.1, 106.25, 216.2",
        "A4_2_X_2, 4, 105, 148, 0, 0.5, 105, 148.5",
        "A4_1_X_2, 2, 199.6, 143.5, 5.2, 5, 5.2, 148.5",
        "LETTER_3_X_10, 30, 66.675, 25.4, 4.7625, 12.7, 144.4625, 241.3",
        "LETTER_2_X_5, 10, 101.6, 50.8, 3.96875, 12.7, 110.33125, 215.9",
        "LETTER_2_X_3, 6, 101.6, 84.6667, 3.96875, 12.7, 110.33125, 182.0333",
        "LETTER_1_X_2, 2, 215.9, 139.7, 0, 0, 0, 139.7"
    })
    void first_and_last_label_of_a_sheet_lie_where_the_sheet_has_them(
            LabelKind kind,
            int places,
            double width,
            double height,
            double left,
            double top,
            double lastLeft,
            double lastTop)
            throws IOException {
        List<Place> laid = places(kind, plain(kind, places, 0));
        assertThat(laid).hasSize(places).allMatch(place -> place.page() == 0);
        near(laid.getFirst(), left, top, width, height);
        near(laid.getLast(), lastLeft, lastTop, width, height);
    }

    @ParameterizedTest
    @EnumSource(LabelKind.class)
    void no_label_lies_over_another_or_beyond_the_sheet(LabelKind kind) throws IOException {
        List<Place> laid = places(kind, plain(kind, kind.places(), 0));
        for (int i = 0; i < laid.size(); i++) {
            Place one = laid.get(i);
            assertThat(one.left()).isGreaterThan(-0.01);
            assertThat(one.top()).isGreaterThan(-0.01);
            assertThat(one.left() + one.width()).isLessThan(kind.page().width().mm() + 0.05);
            assertThat(one.top() + one.height()).isLessThan(kind.page().height().mm() + 0.05);
            for (Place other : laid.subList(i + 1, laid.size())) {
                boolean apart = one.left() + one.width() <= other.left() + 0.01
                        || other.left() + other.width() <= one.left() + 0.01
                        || one.top() + one.height() <= other.top() + 0.01
                        || other.top() + other.height() <= one.top() + 0.01;
                assertThat(apart).as(one + " and " + other).isTrue();
            }
        }
    }

    @Test
    void they_begin_at_any_free_place_and_go_on_to_the_next_sheet() throws IOException {
        List<Place> laid = places(LabelKind.A4_2_X_4, plain(LabelKind.A4_2_X_4, 4, 6));
        assertThat(laid).extracting(Place::page).containsExactly(0, 0, 1, 1);
        near(laid.get(0), 4.65, 216.2, 99.1, 67.7);
        near(laid.get(2), 4.65, 13.1, 99.1, 67.7);
        assertThatThrownBy(() -> plain(LabelKind.A4_2_X_4, 1, 8)).isInstanceOf(Refused.class);
    }

    @Test
    @Tag("slow")
    void every_code_on_a_sheet_of_labels_is_read_back_from_the_drawn_page() throws Exception {
        byte[] pdf = sheet(LabelKind.A4_2_X_4, 3, 2, Optional.of(new Gtin("4006381333931")));
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            BufferedImage page = new PDFRenderer(paper).renderImageWithDPI(0, 300);
            List<Result> codes = new ArrayList<>();
            // One label after the other, as a scanner is held over it.
            for (int place = 2; place < 5; place++) {
                codes.addAll(codes(crop(page, LabelKind.A4_2_X_4, place)));
            }
            assertThat(codes.stream()
                            .filter(code -> code.getBarcodeFormat() == BarcodeFormat.QR_CODE)
                            .map(Result::getText))
                    .containsExactly("2026-0147", "2026-0147", "2026-0147");
            assertThat(codes.stream()
                            .filter(code -> code.getBarcodeFormat() == BarcodeFormat.EAN_13)
                            .map(Result::getText)
                            .collect(Collectors.toSet()))
                    .containsExactly("4006381333931");
        }
    }

    @ParameterizedTest
    @EnumSource(value = LabelKind.class, mode = EnumSource.Mode.EXCLUDE, names = "LETTER_3_X_10")
    void the_whole_warning_stands_on_each_kind_of_label_and_its_code_reads(LabelKind kind) throws Exception {
        byte[] pdf = sheet(kind, 1, 0, Optional.empty());
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(paper).replaceAll("\\s+", " ");
            assertThat(text).contains(WARNING).contains("48 pieces").contains("2026-0147");
            BufferedImage page = new PDFRenderer(paper).renderImageWithDPI(0, 300);
            assertThat(codes(crop(page, kind, 0)).stream().map(Result::getText)).contains("2026-0147");
        }
    }

    @Test
    void a_label_too_small_for_its_warning_is_refused() {
        assertThatThrownBy(() -> drawn(
                        LabelKind.LETTER_3_X_10,
                        1,
                        0,
                        label(Optional.empty(), WARNING.repeat(4), "Our own words. ".repeat(20))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("small");
    }

    private static void near(Place place, double left, double top, double width, double height) {
        assertThat(place.left()).isCloseTo(left, within(0.02));
        assertThat(place.top()).isCloseTo(top, within(0.02));
        assertThat(place.width()).isCloseTo(width, within(0.02));
        assertThat(place.height()).isCloseTo(height, within(0.02));
    }

    private static BufferedImage crop(BufferedImage page, LabelKind kind, int place) {
        double px = page.getWidth() / kind.page().width().mm();
        int x = (int) Math.max(0, Math.round(kind.leftMm(place) * px));
        int y = (int) Math.max(0, Math.round(kind.topMm(place) * px));
        int width = (int)
                Math.min(page.getWidth() - x, Math.round(kind.label().width().mm() * px));
        int height = (int)
                Math.min(page.getHeight() - y, Math.round(kind.label().height().mm() * px));
        return page.getSubimage(x, y, width, height);
    }

    private static List<Result> codes(BufferedImage image) throws Exception {
        int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
        LuminanceSource source = new RGBLuminanceSource(image.getWidth(), image.getHeight(), pixels);
        try {
            return Arrays.asList(new GenericMultipleBarcodeReader(new MultiFormatReader())
                    .decodeMultiple(
                            new BinaryBitmap(new HybridBinarizer(source)), Map.of(DecodeHintType.TRY_HARDER, true)));
        } catch (com.google.zxing.NotFoundException none) {
            return List.of();
        }
    }

    private static byte[] sheet(LabelKind kind, int count, int first, Optional<Gtin> gtin) throws IOException {
        return drawn(kind, count, first, label(gtin, WARNING, "Made from offcuts."));
    }

    private static byte[] plain(LabelKind kind, int count, int first) throws IOException {
        return pdf((document, writer) -> LabelPages.lay(
                document,
                writer,
                kind,
                () -> {
                    PdfTemplate empty = writer.getDirectContent()
                            .createTemplate(
                                    Points.of(kind.label().width().mm()),
                                    Points.of(kind.label().height().mm()));
                    empty.rectangle(0, 0, 1, 1);
                    empty.fill();
                    return java.util.Collections.nCopies(count, empty);
                },
                first));
    }

    private static byte[] drawn(LabelKind kind, int count, int first, BoxLabel label) {
        return pdf((document, writer) -> LabelPages.lay(
                document,
                writer,
                kind,
                () -> java.util.Collections.nCopies(count, label.draw(writer, kind.label())),
                first));
    }

    private static BoxLabel label(Optional<Gtin> gtin, String warning, String words) {
        BufferedImage image = new BufferedImage(300, 200, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < 300; x++) {
            for (int y = 0; y < 200; y++) {
                image.setRGB(x, y, Color.HSBtoRGB(x / 300f, 0.5f, 0.9f));
            }
        }
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "jpeg", jpeg);
        } catch (IOException cannot) {
            throw new IllegalStateException(cannot);
        }
        return new BoxLabel(
                jpeg.toByteArray(),
                "Jigsaw puzzle",
                List.of("300 × 200 mm", "48 pieces", "From 6 years"),
                Optional.of(warning),
                "Birch Yard, Quay Street 4, 24103 Northhaven",
                "2026-0147",
                gtin,
                words);
    }

    private interface Pages {
        void write(Document document, PdfWriter writer);
    }

    private static byte[] pdf(Pages pages) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Document document = new Document();
        PdfWriter writer = PdfWriter.getInstance(document, out);
        pages.write(document, writer);
        document.close();
        return out.toByteArray();
    }

    private static List<Place> places(LabelKind kind, byte[] pdf) throws IOException {
        List<Place> places = new ArrayList<>();
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            for (int i = 0; i < paper.getNumberOfPages(); i++) {
                PDPage page = paper.getPage(i);
                PDRectangle media = page.getMediaBox();
                assertThat(media.getWidth() * MM_A_POINT)
                        .isCloseTo(kind.page().width().mm(), within(0.02));
                assertThat(media.getHeight() * MM_A_POINT)
                        .isCloseTo(kind.page().height().mm(), within(0.02));
                new Forms(i, media, places).processPage(page);
            }
        }
        return places;
    }

    /** Notes where each form of a page is drawn, with the matrix then in force. */
    private static final class Forms extends PDFStreamEngine {

        private final int page;
        private final PDRectangle media;
        private final List<Place> places;

        Forms(int page, PDRectangle media, List<Place> places) {
            this.page = page;
            this.media = media;
            this.places = places;
            addOperator(new Concatenate(this));
            addOperator(new Save(this));
            addOperator(new Restore(this));
            addOperator(new DrawObject(this));
        }

        @Override
        public void showForm(PDFormXObject form) {
            Matrix now = getGraphicsState().getCurrentTransformationMatrix();
            PDRectangle box = form.getBBox();
            places.add(new Place(
                    page,
                    now.getTranslateX() * MM_A_POINT,
                    (media.getHeight() - now.getTranslateY() - box.getHeight()) * MM_A_POINT,
                    box.getWidth() * MM_A_POINT,
                    box.getHeight() * MM_A_POINT));
        }
    }
}
