package puzzleworkshop.artwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.GpsDirectory;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.DatabaseTest;

/** Photos of sheets, edges and work go one way; those of the bench and of trials are checked beside their own tests. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
public class PhotoIntakeIT {

    @Autowired
    SheetRack rack;

    @Autowired
    Photos photos;

    /** Exif orientation 6: to be shown, the picture is turned a quarter clockwise (CIPA DC-008, tag 274). */
    @Test
    void a_photo_of_a_sheet_taken_with_an_upright_phone_stands_upright() {
        SheetId sheet = rack.add(
                Outline.rectangle(Size.mm(400, 300)),
                BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                Money.of("4.00", "EUR"),
                "Robin");
        rack.photo(sheet, CameraPicture.jpeg(400, 7), "Robin");
        requireUprightWithoutTraces(rack.photo(sheet).orElseThrow());
    }

    @Test
    void what_is_kept_is_small_whatever_was_sent() {
        byte[] kept = photos.kept(CameraPicture.jpeg(4000, 8));
        BufferedImage image = read(kept);
        assertThat(Math.max(image.getWidth(), image.getHeight())).isEqualTo(Photos.LONGEST);
        assertThat(kept.length).isLessThan(1_000_000);
    }

    @Test
    void what_is_no_photo_is_refused_whatever_it_is_called() {
        byte[] page = "<html><script>alert(1)</script></html>".getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> photos.kept(page)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> photos.kept(new byte[0])).isInstanceOf(Refused.class);
        byte[] photo = CameraPicture.jpeg(400, 9);
        byte[] cut = Arrays.copyOf(photo, 200);
        assertThatThrownBy(() -> photos.kept(cut)).isInstanceOf(Refused.class);
        // a lossless WebP of 1 × 1 pixel (RFC 9649; as published with feature tests of browsers, from memory), cut
        // short
        byte[] webp = Base64.getDecoder().decode("UklGRhoAAABXRUJQVlA4TA0AAAAvAAAAEAcQERGIiP4HAA==");
        for (int length : new int[] {13, 20, 25, 30}) {
            assertThatThrownBy(() -> photos.kept(Arrays.copyOf(webp, length)))
                    .as("%d bytes of it", length)
                    .isInstanceOf(Refused.class);
        }
    }

    /** A picture of {@link CameraPicture} as it should be kept: 3 by 4, red at the upper left, nothing of the camera. */
    public static void requireUprightWithoutTraces(byte[] kept) {
        BufferedImage image = read(kept);
        assertThat(image.getHeight() * 3).as("3 wide, 4 high").isEqualTo(image.getWidth() * 4);
        int left = image.getRGB(image.getWidth() / 4, image.getHeight() / 4);
        assertThat(left >> 16 & 0xff).as("red at the upper left").isGreaterThan(150);
        assertThat(left >> 8 & 0xff).isLessThan(110);
        Metadata tags = tags(kept);
        assertThat(tags.getFirstDirectoryOfType(ExifIFD0Directory.class)).isNull();
        assertThat(tags.getFirstDirectoryOfType(GpsDirectory.class)).isNull();
        for (Directory directory : tags.getDirectories()) {
            directory
                    .getTags()
                    .forEach(tag ->
                            assertThat(String.valueOf(tag.getDescription())).doesNotContain(CameraPicture.MAKE));
        }
    }

    private static BufferedImage read(byte[] jpeg) {
        try {
            return ImageIO.read(new ByteArrayInputStream(jpeg));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Metadata tags(byte[] jpeg) {
        try {
            return ImageMetadataReader.readMetadata(new ByteArrayInputStream(jpeg));
        } catch (IOException | ImageProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
