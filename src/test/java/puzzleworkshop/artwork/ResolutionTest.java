package puzzleworkshop.artwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import puzzleworkshop.artwork.Resolution.Verdict;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.reading.ColourFacts;
import puzzleworkshop.artwork.reading.PictureFormat;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/** Pixels per inch by definition: 1 in = 25.4 mm exactly (international yard and pound agreement, 1959). */
@DisplayNameGeneration(ReplaceUnderscores.class)
public class ResolutionTest {

    private static final Length OVERHANG = Length.mm(3);

    @Test
    void three_thousand_pixels_over_254_mm_are_300_to_the_inch() {
        Resolution resolution = judge(picture(3000, 3000), Size.mm(254, 254));
        assertThat(resolution.ppi()).isEqualTo(300, within(1e-9));
        assertThat(resolution.verdict()).isEqualTo(Verdict.SHARP);
        assertThat(resolution.sharpUpTo()).isEqualTo(Size.mm(254, 254));
    }

    /** A4 is 210 × 297 mm (ISO 216); 2480 × 3508 pixels give 299.96… and 300.01…. */
    @Test
    void the_usual_pixels_of_A4_count_as_sharp() {
        Picture picture = picture(2480, 3508);
        Crop whole = new Crop(0, 0, 1, 1, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        Resolution resolution = Resolution.judge(picture, whole, Size.mm(210, 297), OVERHANG, PrintLimits.USUAL);
        assertThat(resolution.ppi())
                .isEqualTo(2480 / (210 / 25.4), within(1e-9))
                .isLessThan(300);
        assertThat(resolution.verdict()).isEqualTo(Verdict.SHARP);
    }

    /** Limits: common practice. */
    @ParameterizedTest
    @CsvSource({"300,SHARP", "299,GOOD", "200,GOOD", "199,SOFT", "150,SOFT", "149,REFUSE", "1,REFUSE"})
    void the_verdict_changes_at_300_200_and_150(int ppi, Verdict verdict) {
        assertThat(judge(picture(ppi * 10, ppi * 10), Size.mm(254, 254)).verdict())
                .isEqualTo(verdict);
    }

    @Test
    void a_smaller_frame_has_fewer_pixels_for_the_same_size() {
        Picture picture = picture(6000, 4000);
        Crop half = new Crop(0.25, 0.25, 0.5, 0.5, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        Resolution resolution =
                Resolution.judge(picture, half, Size.mm(254, 254 * 2 / 3.0), OVERHANG, PrintLimits.USUAL);
        assertThat(resolution.ppi()).isEqualTo(300, within(1e-9));
        assertThat(resolution.overhangCovered()).isTrue();
    }

    @Test
    void the_size_up_to_which_it_is_sharp_is_sharp_and_a_larger_one_is_not() {
        Picture picture = picture(4961, 3307);
        Size sharp = judge(picture, Size.mm(600, 400)).sharpUpTo();
        assertThat(sharp).isEqualTo(Size.mm(420, 280));
        assertThat(judge(picture, sharp).verdict()).isEqualTo(Verdict.SHARP);
        assertThat(judge(picture, Size.mm(424.5, 283)).verdict()).isEqualTo(Verdict.GOOD);
    }

    @Test
    void a_turned_picture_is_judged_as_it_is_turned() {
        Picture picture = picture(6000, 4000);
        Size upright = Size.mm(200, 300);
        Resolution turned = Resolution.judge(
                picture, Crop.filling(picture, upright.aspect(), 1), upright, OVERHANG, PrintLimits.USUAL);
        assertThat(turned.ppi()).isEqualTo(4000 / (200 / 25.4), within(1e-9));
        Resolution unturned = Resolution.judge(
                picture, Crop.filling(picture, upright.aspect()), upright, OVERHANG, PrintLimits.USUAL);
        assertThat(unturned.ppi()).isEqualTo(4000 / (300 / 25.4), within(1e-9));
    }

    @Test
    void a_frame_up_to_the_picture_s_edge_leaves_nothing_for_the_overhang() {
        Picture picture = picture(3000, 2000);
        assertThat(judge(picture, Size.mm(300, 200)).overhangCovered()).isFalse();
        // 3 mm of 300 mm need a hundredth of the frame on either side: a frame of 1/1.02 in the middle has just that.
        double most = 1 / 1.02;
        Crop within = new Crop((1 - most) / 2, 0.01, most, most, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        assertThat(Resolution.judge(picture, within, Size.mm(300, 200), Length.ZERO, PrintLimits.USUAL)
                        .overhangCovered())
                .isTrue();
        assertThat(Resolution.judge(picture, within, Size.mm(300, 200), OVERHANG, PrintLimits.USUAL)
                        .overhangCovered())
                .isFalse();
        Crop centred =
                new Crop((1 - 0.9) / 2, (1 - 0.9) / 2, 0.9, 0.9, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        assertThat(Resolution.judge(picture, centred, Size.mm(300, 200), OVERHANG, PrintLimits.USUAL)
                        .overhangCovered())
                .isTrue();
    }

    private static Resolution judge(Picture picture, Size finished) {
        return Resolution.judge(
                picture, Crop.filling(picture, finished.aspect()), finished, OVERHANG, PrintLimits.USUAL);
    }

    public static Picture picture(int width, int height) {
        return new Picture(
                new PictureId(new UUID(1, 1)),
                "a.jpg",
                PictureFormat.JPEG,
                width,
                height,
                1,
                "0".repeat(64),
                1,
                new ColourFacts(ColourFacts.Model.RGB, 8, false, Optional.empty()),
                Optional.empty(),
                List.of(),
                Instant.EPOCH);
    }
}
