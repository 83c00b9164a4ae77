package puzzleworkshop.artwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.exif.ExifIFD0Directory;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
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
    void a_print_has_the_picture_s_own_resolution_up_to_the_one_asked_for() throws Exception {
        byte[] jpeg = SamplePictures.withOrientation(SamplePictures.encode(SamplePictures.quarters(1600, 1200), "jpg"), 6);
        Picture picture = pictures.take("q.jpg", new ByteArrayInputStream(jpeg));
        Size finished = Size.mm(90, 120);
        Crop crop = Crop.filling(picture, finished.aspect());

        // 1200 pixels on 90 mm are 338.67 per inch by definition; asked for at most 300.
        PrintPicture print = cropped.print(picture.id(), crop, finished, OVERHANG, 300);
        assertThat(print.ppi()).isEqualTo(300, within(0.2));
        assertThat(print.printed().width().mm()).isEqualTo(96, within(0.2));
        assertThat(print.printed().height().mm()).isEqualTo(126, within(0.2));
        BufferedImage read = ImageIO.read(new ByteArrayInputStream(print.jpeg()));
        assertThat(read.getWidth()).isEqualTo(print.width());
        assertThat(read.getHeight()).isEqualTo(print.height());
        // Orientation 6: what is stored at the lower left (blue) is seen at the upper left.
        assertThat(read.getRGB(100, 100) & 0xFFFFFF).isEqualTo(near(read.getRGB(100, 100), 0x0000FF));
        assertThat(read.getRGB(print.width() - 100, 100) & 0xFFFFFF).isEqualTo(near(read.getRGB(print.width() - 100, 100), 0xFF0000));
        assertThat(ImageMetadataReader.readMetadata(new ByteArrayInputStream(print.jpeg()))
                .getFirstDirectoryOfType(ExifIFD0Directory.class)).isNull();

        PrintPicture finest = cropped.print(picture.id(), crop, finished, OVERHANG, 1200);
        assertThat(finest.ppi()).isEqualTo(1200 / (90 / 25.4), within(0.5));
    }

    @Test
    void a_proof_has_the_pixels_asked_for_and_never_more_than_the_picture() throws Exception {
        Picture picture = pictures.take(
                "leaves.png", new ByteArrayInputStream(SamplePictures.encode(SamplePictures.leaves(2400, 1600, 3), "png")));
        Crop small = new Crop(0.4, 0.4, 0.2, 0.2, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        Size finished = Size.mm(300, 200);
        assertThat(widthOf(cropped.proof(picture.id(), small, finished, Length.ZERO, 900))).isEqualTo(480);
        assertThat(widthOf(cropped.proof(picture.id(), Crop.filling(picture, 1.5), finished, Length.ZERO, 900))).isEqualTo(900);
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
