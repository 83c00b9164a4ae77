package puzzleworkshop.camera.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.model.RigidFit;

/** What is printed, judged by PDFBox: its page size, and the markers found in its own rendering. */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class SheetPaperTest {

    private static final double POINTS_PER_MM = 72 / 25.4;

    /** ISO 216; ANSI/ASME Y14.1 for Letter; ISO 32000-1 counts in 1/72 inch. */
    @ParameterizedTest
    @EnumSource(
            value = MeasuringSheet.class,
            names = {"A4", "LETTER", "A3"})
    void the_page_has_the_size_of_its_paper(MeasuringSheet sheet) throws IOException {
        try (PDDocument paper = Loader.loadPDF(SheetPaper.pdf(sheet, "t", List.of("w"), false))) {
            assertThat(paper.getNumberOfPages()).isEqualTo(1);
            double width = paper.getPage(0).getMediaBox().getWidth() / POINTS_PER_MM;
            double height = paper.getPage(0).getMediaBox().getHeight() / POINTS_PER_MM;
            double[] size = switch (sheet) {
                case A4 -> new double[] {210, 297};
                case LETTER -> new double[] {215.9, 279.4};
                default -> new double[] {420, 297};
            };
            assertThat(width).isCloseTo(size[0], within(0.01));
            assertThat(height).isCloseTo(size[1], within(0.01));
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = MeasuringSheet.class,
            names = {"A4", "LETTER", "A3"})
    void every_printed_marker_is_found_where_it_should_stand(MeasuringSheet sheet) throws IOException {
        double dpi = 200;
        Photo photo = rendered(SheetPaper.pdf(sheet, "t", List.of("Print at 100 %"), false), dpi);
        List<SeenMarker> seen = MarkerFinder.find(photo);
        assertThat(seen).hasSameSizeAs(sheet.markers(0));
        // PDFBox moves edges to whole pixels, so half of one is what it can tell
        for (SeenMarker marker : seen) {
            double[] corners = sheet.marker(marker.code()).corners();
            for (int i = 0; i < 8; i++) {
                assertThat(marker.corners()[i] * 25.4 / dpi)
                        .as("marker %d, corner %d", marker.code(), i / 2)
                        .isCloseTo(corners[i], within(0.5 * 25.4 / dpi));
            }
        }
    }

    @Test
    void the_four_cards_stand_on_one_page_and_each_keeps_its_shape() throws IOException {
        for (boolean letter : new boolean[] {false, true}) {
            Photo photo = rendered(SheetPaper.pdf(MeasuringSheet.CARDS, "t", List.of("w"), letter), 150);
            List<SeenMarker> seen = MarkerFinder.find(photo);
            for (int part = 0; part < 4; part++) {
                int wanted = part;
                List<SeenMarker> mine = seen.stream()
                        .filter(m -> MeasuringSheet.of(m.code()).orElseThrow() == MeasuringSheet.CARDS)
                        .filter(m -> MeasuringSheet.CARDS.partOf(m.code()) == wanted)
                        .toList();
                assertThat(mine).hasSameSizeAs(MeasuringSheet.CARDS.markers(part));
                double[] from = new double[8 * mine.size()];
                double[] to = new double[8 * mine.size()];
                for (int i = 0; i < mine.size(); i++) {
                    System.arraycopy(
                            MeasuringSheet.CARDS.marker(mine.get(i).code()).corners(), 0, from, 8 * i, 8);
                    System.arraycopy(mine.get(i).corners(), 0, to, 8 * i, 8);
                }
                RigidFit fit = RigidFit.similar(from, to);
                assertThat(fit.scale() * 25.4 / 150).isCloseTo(1, within(0.001));
                assertThat(Math.sqrt(fit.meanSquaredError())).isLessThan(0.4);
            }
        }
    }

    @Test
    void the_sheet_in_the_tree_is_the_one_the_program_prints() throws IOException {
        Photo kept = rendered(Files.readAllBytes(Path.of("src/docs/measuring-sheet-a4.pdf")), 100);
        Set<Integer> codes = new HashSet<>();
        MarkerFinder.find(kept).forEach(m -> codes.add(m.code()));
        Set<Integer> wanted = new HashSet<>();
        MeasuringSheet.A4.markers(0).forEach(m -> wanted.add(m.code()));
        assertThat(codes).isEqualTo(wanted);
    }

    @Test
    void no_marker_stands_on_two_sheets() {
        Set<Integer> codes = new HashSet<>();
        int count = 0;
        for (MeasuringSheet sheet : MeasuringSheet.values()) {
            for (int part = 0; part < sheet.parts(); part++) {
                for (Marker marker : sheet.markers(part)) {
                    codes.add(marker.code());
                    count++;
                    assertThat(MeasuringSheet.of(marker.code())).contains(sheet);
                    assertThat(sheet.partOf(marker.code())).isEqualTo(part);
                    assertThat(sheet.marker(marker.code())).isEqualTo(marker);
                }
            }
        }
        assertThat(codes).hasSize(count);
    }

    /** Java2D turns and shrinks the printed page: another renderer than ours, in any turn and several sizes. */
    @Test
    void a_sheet_is_found_in_any_turn_and_size_and_half_covered() throws IOException {
        BufferedImage page = image(SheetPaper.pdf(MeasuringSheet.A4, "t", List.of("w"), false), 200);
        for (double turn : new double[] {0, 0.5, 1.7, Math.PI, 4.4}) {
            for (double size : new double[] {0.35, 0.7, 1}) {
                BufferedImage table = new BufferedImage(2600, 2600, BufferedImage.TYPE_INT_RGB);
                Graphics2D pen = table.createGraphics();
                pen.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
                AffineTransform move = AffineTransform.getTranslateInstance(1300, 1300);
                move.rotate(turn);
                move.scale(size, size);
                move.translate(-page.getWidth() / 2.0, -page.getHeight() / 2.0);
                pen.drawImage(page, move, null);
                pen.setTransform(move);
                pen.setColor(new java.awt.Color(200, 160, 110));
                pen.fillRect(0, 900, page.getWidth() * 3 / 5, 700);
                pen.dispose();
                SeenSheet seen = MeasuringSheetFinder.find(photo(table));
                assertThat(seen.sheet()).isEqualTo(MeasuringSheet.A4);
                double[] out = new double[2];
                // the middle of the paper is seen in the middle of the picture
                seen.view().onPlane(1300, 1300, 0, out);
                assertThat(out[0]).as("turn %.1f size %.2f", turn, size).isCloseTo(105, within(0.15));
                assertThat(out[1]).as("turn %.1f size %.2f", turn, size).isCloseTo(148.5, within(0.15));
            }
        }
    }

    static Photo rendered(byte[] pdf, double dpi) throws IOException {
        return photo(image(pdf, dpi));
    }

    private static BufferedImage image(byte[] pdf, double dpi) throws IOException {
        try (PDDocument paper = Loader.loadPDF(pdf)) {
            return new PDFRenderer(paper).renderImageWithDPI(0, (float) dpi);
        }
    }

    private static Photo photo(BufferedImage image) {
        int w = image.getWidth();
        int h = image.getHeight();
        int[] rgb = image.getRGB(0, 0, w, h, null, 0, w);
        for (int i = 0; i < rgb.length; i++) {
            rgb[i] &= 0xFFFFFF;
        }
        return new Photo(w, h, rgb);
    }
}
