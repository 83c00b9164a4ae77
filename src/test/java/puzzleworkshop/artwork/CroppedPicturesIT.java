package puzzleworkshop.artwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.ExifIFD0Directory;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class CroppedPicturesIT {

    private static final Length OVERHANG = Length.mm(3);

    @Autowired
    Pictures pictures;

    @Autowired
    CroppedPictures cropped;

    @Test
    void what_has_to_be_drawn_anew_has_the_picture_s_own_resolution_up_to_the_one_asked_for() throws Exception {
        byte[] png = SamplePictures.encode(SamplePictures.quarters(1200, 1600), "png");
        Picture picture = pictures.take("q.png", new ByteArrayInputStream(png));
        Size finished = Size.mm(90, 120);
        Crop crop = Crop.filling(picture, finished.aspect());

        // 1200 pixels on 90 mm are 338.67 per inch by definition; asked for at most 300.
        try (PrintPicture print = cropped.print(picture.id(), crop, finished, OVERHANG, 300)) {
            assertThat(print.untouched()).isFalse();
            assertThat(print.ppi()).isEqualTo(300, within(0.2));
            PrintPicture.Lay laid = print.laid().getFirst();
            assertThat(laid.acrossX()).isEqualTo(96, within(0.2));
            assertThat(laid.downY()).isEqualTo(126, within(0.2));
            BufferedImage read = ImageIO.read(print.jpeg().toFile());
            assertThat(read.getWidth()).isEqualTo(print.width());
            assertThat(read.getHeight()).isEqualTo(print.height());
            assertThat(read.getRGB(100, 100) & 0xFFFFFF).isEqualTo(near(read.getRGB(100, 100), 0xFF0000));
        }
        try (PrintPicture finest = cropped.print(picture.id(), crop, finished, OVERHANG, 1200)) {
            assertThat(finest.ppi()).isEqualTo(1200 / (90 / 25.4), within(0.5));
        }
    }

    @Test
    void a_jpeg_goes_to_print_bit_for_bit_with_its_colours_and_without_its_place() throws Exception {
        byte[] plain = SamplePictures.encode(SamplePictures.leaves(1600, 1200, 4), "jpg");
        byte[] profile = java.awt.color.ICC_Profile.getInstance(java.awt.color.ColorSpace.CS_sRGB)
                .getData();
        byte[] secret = "Exif\0\0 secret place 54.32 N 10.13 E".getBytes(java.nio.charset.StandardCharsets.ISO_8859_1);
        byte[] sent = SamplePictures.withOrientation(
                SamplePictures.withProfile(
                        SamplePictures.withSegment(SamplePictures.withSegment(plain, 0xE1, secret), 0xFE, secret),
                        profile),
                6);
        byte[] trailed = java.util.Arrays.copyOf(sent, sent.length + secret.length);
        System.arraycopy(secret, 0, trailed, sent.length, secret.length);
        Picture picture = pictures.take("camera.jpg", new ByteArrayInputStream(trailed));
        Size finished = Size.mm(90, 120);
        Path file;
        try (PrintPicture print =
                cropped.print(picture.id(), Crop.filling(picture, finished.aspect()), finished, OVERHANG, 300)) {
            file = print.jpeg();
            assertThat(print.untouched()).isTrue();
            assertThat(print.ppi()).isEqualTo(1200 / (90 / 25.4), within(0.01));
            assertThat(print.profile())
                    .hasValueSatisfying(kept -> assertThat(kept).isEqualTo(profile));
            byte[] written = Files.readAllBytes(file);
            assertThat(new String(written, java.nio.charset.StandardCharsets.ISO_8859_1))
                    .doesNotContain("secret", "Exif", "JFIF");
            assertThat(ImageMetadataReader.readMetadata(new ByteArrayInputStream(written))
                            .containsDirectoryOfType(ExifIFD0Directory.class))
                    .isFalse();
            assertThat(pixels(written)).as("pixels as Java decodes them").isEqualTo(pixels(plain));
        }
        assertThat(file).doesNotExist();
    }

    private static int[] pixels(byte[] jpeg) throws Exception {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(jpeg));
        return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
    }

    @Test
    void a_proof_has_the_pixels_asked_for_and_never_more_than_the_picture() throws Exception {
        Picture picture = pictures.take(
                "leaves.png",
                new ByteArrayInputStream(SamplePictures.encode(SamplePictures.leaves(2400, 1600, 3), "png")));
        Crop small = new Crop(0.4, 0.4, 0.2, 0.2, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        Size finished = Size.mm(300, 200);
        assertThat(widthOf(cropped.proof(picture.id(), small, finished, Length.ZERO, 900)))
                .isEqualTo(480);
        assertThat(widthOf(cropped.proof(picture.id(), Crop.filling(picture, 1.5), finished, Length.ZERO, 900)))
                .isEqualTo(900);
    }

    private static int widthOf(byte[] jpeg) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(jpeg)).getWidth();
    }

    /** The colour itself when it is near enough after two JPEG passes, else something that shows the difference. */
    private static int near(int rgb, int wanted) {
        for (int shift = 0; shift <= 16; shift += 8) {
            if (Math.abs((rgb >> shift & 0xFF) - (wanted >> shift & 0xFF)) > 16) {
                return wanted;
            }
        }
        return rgb & 0xFFFFFF;
    }
}
