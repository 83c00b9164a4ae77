package puzzleworkshop.artwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** The Exif block is put together here by hand after CIPA DC-008: tag 34665 leads to the sub-directory, 41989 is the film's focal length. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PhotoFocalTest {

    @Test
    void a_lens_of_26_mm_film_equivalent_on_a_four_by_three_photo_is_three_quarters_of_its_longer_side()
            throws IOException {
        // 26 mm on the film's diagonal of 43.267 mm; the photo's diagonal is 5/4 of its longer side
        assertThat(Photos.focal(photo(26, 40, 30), 40, 30)).isCloseTo(26 / 43.267 * 1.25, within(1e-4));
    }

    @Test
    void a_photo_that_was_cut_since_or_says_nothing_is_not_believed() throws IOException {
        assertThat(Photos.focal(photo(26, 40, 20), 40, 30)).isNaN();
        assertThat(Photos.focal(photo(0, 40, 30), 40, 30)).isNaN();
        assertThat(Photos.focal(bare(), 40, 30)).isNaN();
        assertThat(Photos.focal(new byte[] {1, 2, 3}, 40, 30)).isNaN();
    }

    private static byte[] bare() throws IOException {
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), "jpeg", jpeg);
        return jpeg.toByteArray();
    }

    private static byte[] photo(int film, int width, int height) throws IOException {
        ByteBuffer tiff = ByteBuffer.allocate(26 + 2 + 3 * 12 + 4).order(ByteOrder.LITTLE_ENDIAN);
        tiff.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(8);
        tiff.putShort((short) 1);
        entry(tiff, 34665, 4, 26);
        tiff.putInt(0);
        tiff.putShort((short) 3);
        entry(tiff, 40962, 4, width);
        entry(tiff, 40963, 4, height);
        entry(tiff, 41989, 3, film);
        tiff.putInt(0);
        byte[] bare = bare();
        ByteArrayOutputStream jpeg = new ByteArrayOutputStream();
        jpeg.write(bare, 0, 2);
        int length = 2 + 6 + tiff.capacity();
        jpeg.write(new byte[] {(byte) 0xFF, (byte) 0xE1, (byte) (length >> 8), (byte) length});
        jpeg.write(new byte[] {'E', 'x', 'i', 'f', 0, 0});
        jpeg.write(tiff.array());
        jpeg.write(bare, 2, bare.length - 2);
        return jpeg.toByteArray();
    }

    private static void entry(ByteBuffer tiff, int tag, int type, int value) {
        tiff.putShort((short) tag).putShort((short) type).putInt(1).putInt(value);
    }
}
