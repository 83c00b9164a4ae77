package puzzleworkshop.artwork.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.nio.file.Path;
import java.util.Base64;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.artwork.pixels.Frame;
import puzzleworkshop.artwork.pixels.Survey;
import puzzleworkshop.artwork.reading.ColourFacts.Model;
import puzzleworkshop.artwork.rows.ImageProbe;

@DisplayNameGeneration(ReplaceUnderscores.class)
public class FormatsTest {

    /** A lossless WebP of 1 × 1 pixel (RFC 9649), as published with feature tests of browsers (from memory). */
    private static final String SMALL_WEBP = "UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA==";

    @TempDir
    Path folder;

    @Test
    void grey_JPEG() throws Exception {
        BufferedImage grey = new BufferedImage(90, 60, BufferedImage.TYPE_BYTE_GRAY);
        grey.getGraphics().fillRect(0, 0, 45, 60);
        Survey survey = survey("jpg", SamplePictures.encode(grey, "jpg"), PictureFormat.JPEG, Model.GREY);
        assertNear(survey.copy(), 20, 30, 255, 255, 255);
        assertNear(survey.copy(), 70, 30, 0, 0, 0);
    }

    /** Java's reader hands on every row after every scan; the last ones are the picture. */
    @Test
    void progressive_JPEG_in_colour_and_grey() throws Exception {
        BufferedImage quarters = SamplePictures.quarters(90, 60);
        BufferedImage grey = new BufferedImage(90, 60, BufferedImage.TYPE_BYTE_GRAY);
        grey.getGraphics().fillRect(0, 0, 45, 60);
        Frame colour = survey("jpg", progressive(quarters), PictureFormat.JPEG, Model.RGB)
                .copy();
        assertNear(colour, 10, 10, 255, 0, 0);
        assertNear(colour, 80, 50, 255, 255, 0);
        Frame light =
                survey("jpg", progressive(grey), PictureFormat.JPEG, Model.GREY).copy();
        assertNear(light, 20, 30, 255, 255, 255);
        assertNear(light, 70, 30, 0, 0, 0);
    }

    public static byte[] progressive(BufferedImage image) throws Exception {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), param);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    /** Four inks as a printing program writes them: an Adobe segment and inverted values (Adobe Technical Note 5116). */
    @Test
    void inverted_CMYK_JPEG_becomes_the_colours_of_its_inks() throws Exception {
        Survey survey = survey("jpg", cmyk(true), PictureFormat.JPEG, Model.CMYK);
        // Cyan; magenta and yellow together; black; paper.
        assertNear(survey.copy(), 8, 8, 0, 255, 255);
        assertNear(survey.copy(), 24, 8, 255, 0, 0);
        assertNear(survey.copy(), 40, 8, 0, 0, 0);
        assertNear(survey.copy(), 56, 8, 255, 255, 255);
    }

    /** A linear profile makes middle grey far lighter on an sRGB screen: 0.5 linear is 188 (IEC 61966-2-1). */
    @Test
    void an_embedded_profile_is_honoured() throws Exception {
        BufferedImage grey = new BufferedImage(64, 64, BufferedImage.TYPE_INT_RGB);
        java.awt.Graphics2D g = grey.createGraphics();
        g.setColor(new Color(128, 128, 128));
        g.fillRect(0, 0, 64, 64);
        g.dispose();
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_LINEAR_RGB).getData();
        byte[] jpeg = SamplePictures.withProfile(SamplePictures.encode(grey, "jpg"), profile);
        assertNear(survey("jpg", jpeg, PictureFormat.JPEG, Model.RGB).copy(), 32, 32, 188, 188, 188);
    }

    @Test
    void a_broken_profile_does_no_harm() throws Exception {
        byte[] jpeg = SamplePictures.withProfile(
                SamplePictures.encode(SamplePictures.quarters(64, 48), "jpg"), new byte[500]);
        assertNear(survey("jpg", jpeg, PictureFormat.JPEG, Model.RGB).copy(), 10, 10, 255, 0, 0);
    }

    @Test
    void indexed_deep_and_interlaced_PNG() throws Exception {
        IndexColorModel colours =
                new IndexColorModel(1, 2, new byte[] {(byte) 255, 0}, new byte[] {0, 0}, new byte[] {0, (byte) 255});
        BufferedImage indexed = new BufferedImage(50, 40, BufferedImage.TYPE_BYTE_BINARY, colours);
        indexed.setRGB(5, 5, 0xFF0000FF);
        Frame one = survey("png", SamplePictures.encode(indexed, "png"), PictureFormat.PNG, Model.RGB)
                .copy();
        assertNear(one, 20, 20, 255, 0, 0);
        assertNear(one, 5, 5, 0, 0, 255);

        BufferedImage deep = new BufferedImage(50, 40, BufferedImage.TYPE_USHORT_GRAY);
        for (int i = 0; i < 50 * 40; i++) {
            deep.getRaster().setSample(i % 50, i / 50, 0, 0x8000);
        }
        assertThat(survey("png", SamplePictures.encode(deep, "png"), PictureFormat.PNG, Model.GREY)
                                .copy()
                                .samples()[300]
                        & 0xFF)
                .isBetween(127, 129);

        assertNear(
                survey("png", interlaced(SamplePictures.quarters(61, 47)), PictureFormat.PNG, Model.RGB)
                        .copy(),
                50,
                40,
                255,
                255,
                0);
    }

    @ParameterizedTest
    @ValueSource(strings = {"LZW", "Deflate", "JPEG", "None"})
    void TIFF_of_several_compressions(String compression) throws Exception {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("tiff").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            for (String type : param.getCompressionTypes()) {
                if (compression.equalsIgnoreCase(type)) {
                    param.setCompressionType(type);
                }
            }
            writer.setOutput(out);
            writer.write(null, new IIOImage(SamplePictures.quarters(120, 90), null, null), param);
        }
        writer.dispose();
        Frame copy = survey("tif", bytes.toByteArray(), PictureFormat.TIFF, Model.RGB)
                .copy();
        assertNear(copy, 20, 20, 255, 0, 0);
        assertNear(copy, 100, 80, 255, 255, 0);
    }

    @Test
    void WebP() throws Exception {
        Survey survey = survey("webp", Base64.getDecoder().decode(SMALL_WEBP), PictureFormat.WEBP, Model.RGB);
        assertThat(survey.copy().width()).isEqualTo(1);
        assertThat(survey.copy().height()).isEqualTo(1);
    }

    /** A6 is 105 × 148 mm (ISO 216); at 300 pixels per inch 1240 × 1748. */
    @Test
    void the_first_page_of_a_PDF() throws Exception {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            PDPage page = new PDPage(PDRectangle.A6);
            document.addPage(page);
            document.addPage(new PDPage());
            try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                content.setNonStrokingColor(Color.GREEN);
                content.addRect(0, 0, PDRectangle.A6.getWidth(), PDRectangle.A6.getHeight() / 2);
                content.fill();
            }
            document.save(bytes);
        }
        Path file = SamplePictures.write(folder, "a.pdf", bytes.toByteArray());
        ImageHeader facts = ImageProbe.at(file, IntakeLimits.USUAL);
        assertThat(facts.storedWidth()).isBetween(1239, 1241);
        assertThat(facts.storedHeight()).isBetween(1747, 1749);
        assertThat(facts.notices()).extracting("key").contains("artwork.notice.first-page", "artwork.notice.pdf-drawn");
        Frame copy = Survey.of(file, facts, 400, share -> {}).copy();
        assertNear(copy, 100, 100, 255, 255, 255);
        assertNear(copy, 100, 300, 0, 255, 0);
    }

    private Survey survey(String ending, byte[] bytes, PictureFormat format, Model model) throws Exception {
        Path file = SamplePictures.write(folder, "a." + ending, bytes);
        ImageHeader facts = ImageProbe.at(file, IntakeLimits.USUAL);
        assertThat(facts.format()).isEqualTo(format);
        assertThat(facts.colours().model()).isEqualTo(model);
        return Survey.of(file, facts, 1600, share -> {});
    }

    public static byte[] cmyk(boolean inverted) throws Exception {
        int[][] inks = {{255, 0, 0, 0}, {0, 255, 255, 0}, {0, 0, 0, 255}, {0, 0, 0, 0}};
        WritableRaster raster = Raster.createInterleavedRaster(0, 64, 16, 4, null);
        for (int y = 0; y < 16; y++) {
            for (int x = 0; x < 64; x++) {
                for (int c = 0; c < 4; c++) {
                    int ink = inks[x / 16][c];
                    raster.setSample(x, y, c, inverted ? 255 - ink : ink);
                }
            }
        }
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            writer.setOutput(out);
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(1);
            writer.write(null, new IIOImage(raster, null, null), param);
        }
        writer.dispose();
        byte[] adobe = {'A', 'd', 'o', 'b', 'e', 0, 100, 0, 0, 0, 0, 0};
        return inverted ? SamplePictures.withSegment(bytes.toByteArray(), 0xEE, adobe) : bytes.toByteArray();
    }

    public static byte[] interlaced(BufferedImage image) throws Exception {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
            writer.setOutput(out);
            writer.write(
                    null,
                    new IIOImage(image, null, writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), param)),
                    param);
        }
        writer.dispose();
        assertThat(bytes.toByteArray()[28]).isEqualTo((byte) 1);
        return bytes.toByteArray();
    }

    private static void assertNear(Frame frame, int x, int y, int red, int green, int blue) {
        int at = (y * frame.width() + x) * 3;
        int[] wanted = {red, green, blue};
        for (int c = 0; c < 3; c++) {
            assertThat(frame.samples()[at + c] & 0xFF)
                    .as("channel %d at %d, %d", c, x, y)
                    .isBetween(wanted[c] - 14, wanted[c] + 14);
        }
    }
}
