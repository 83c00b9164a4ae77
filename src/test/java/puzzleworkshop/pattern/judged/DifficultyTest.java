package puzzleworkshop.pattern.judged;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * The order of published findings; where they are ranges that puzzlers and makers tell each other, that is common practice
 * and said so.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DifficultyTest {

    private static final CutPattern HUNDRED =
            PatternMaker.make(PatternSpec.of(Size.mm(300, 200), new PieceGrid(12, 8), 3));

    private static CutPattern pattern(int columns, int rows) {
        return PatternMaker.make(PatternSpec.of(Size.mm(columns * 20, rows * 20), new PieceGrid(columns, rows), 3)
                .withDesign(PatternSpec.FIRST_DESIGN));
    }

    /** Common practice: 500 pieces 2 to 7 hours, 1,000 pieces 5 to 12 hours; 100 pieces well below an hour. */
    @Test
    void the_minutes_of_usual_puzzles_lie_within_the_published_ranges() {
        double usual = PictureAlikeness.USUAL;
        // the first design's edges may be alike: that factor is no part of the ranges
        assertThat(Difficulty.of(pattern(25, 20), usual).minutes() / 1.3).isBetween(2 * 60.0, 7 * 60.0);
        assertThat(Difficulty.of(pattern(40, 25), usual).minutes() / 1.3).isBetween(5 * 60.0, 12 * 60.0);
        assertThat(Difficulty.of(HUNDRED, usual).minutes()).isLessThan(60);
    }

    /**
     * Fissler and others, Frontiers in Aging Neuroscience 10 (2018) 299: 3,589 pieces in 49 hours, 73 an hour, from 50 years
     * on. Neither ten times faster nor slower.
     */
    @Test
    void pieces_an_hour_are_of_the_size_that_was_measured() {
        double hours = Difficulty.of(pattern(25, 20), PictureAlikeness.USUAL).minutes() / 60;
        assertThat(500 / hours).isBetween(73.0, 150.0);
    }

    /** More pieces, one colour, lines that slip: each makes it harder; time grows faster than the count. */
    @Test
    void the_order_is_that_of_the_findings() {
        double last = 0;
        double lastEach = 0;
        for (int side = 4; side <= 20; side += 4) {
            double minutes = Difficulty.of(pattern(side, side)).minutes();
            assertThat(minutes).isGreaterThan(last);
            assertThat(minutes / (side * side)).isGreaterThan(lastEach);
            last = minutes;
            lastEach = minutes / (side * side);
        }
        assertThat(Difficulty.of(HUNDRED, 1).minutes())
                .isGreaterThan(2 * Difficulty.of(HUNDRED, 0.3).minutes());
        assertThat(Difficulty.of(PatternMaker.make(HUNDRED.spec().withStyle(CutStyle.WAVY)))
                        .minutes())
                .isGreaterThan(Difficulty.of(HUNDRED).minutes());
        // the same count in one row is nearly all edge
        CutPattern row = PatternMaker.make(PatternSpec.of(Size.mm(480, 40), new PieceGrid(24, 2), 3));
        CutPattern square = PatternMaker.make(PatternSpec.of(Size.mm(160, 120), new PieceGrid(8, 6), 3));
        assertThat(Difficulty.of(row).minutes())
                .isLessThan(Difficulty.of(square).minutes());
    }

    @Test
    void a_picture_of_one_colour_is_alike_all_over_and_a_chequered_one_nowhere() {
        BufferedImage one = new BufferedImage(300, 200, BufferedImage.TYPE_INT_RGB);
        assertThat(PictureAlikeness.of(HUNDRED, one)).isEqualTo(1);
        BufferedImage many = new BufferedImage(300, 200, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = many.createGraphics();
        for (int i = 0; i < 96; i++) {
            g.setColor(Color.getHSBColor(i * 0.381966f, 1, i % 2 == 0 ? 1 : 0.5f));
            g.fillRect(i % 12 * 25, i / 12 * 25, 25, 25);
        }
        g.dispose();
        assertThat(PictureAlikeness.of(HUNDRED, many)).isLessThan(0.2);
    }

    /** A slow change from left to right lies between the two, and texture alone tells pieces apart as well. */
    @Test
    void colour_and_texture_both_count() {
        BufferedImage slow = new BufferedImage(300, 200, BufferedImage.TYPE_INT_RGB);
        BufferedImage texture = new BufferedImage(300, 200, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < 200; y++) {
            for (int x = 0; x < 300; x++) {
                slow.setRGB(x, y, new Color(x * 255 / 300, 120, 120).getRGB());
                int wild = x / 25 % 2 == y / 25 % 2 ? (x + y) % 2 * 90 : 45;
                texture.setRGB(x, y, new Color(80 + wild, 80 + wild, 80 + wild).getRGB());
            }
        }
        assertThat(PictureAlikeness.of(HUNDRED, slow)).isBetween(0.4, 0.95);
        assertThat(PictureAlikeness.of(HUNDRED, texture)).isLessThan(0.6);
    }

    /** Values of CIELAB for the primaries of sRGB, white D65; common tables, from memory: red 53.24, 80.09, 67.20. */
    @Test
    void colours_are_those_of_cielab() {
        double[] red = PictureAlikeness.lab(0xFF0000);
        assertThat(red[0]).isCloseTo(53.24, within(0.05));
        assertThat(red[1]).isCloseTo(80.09, within(0.1));
        assertThat(red[2]).isCloseTo(67.20, within(0.1));
        double[] white = PictureAlikeness.lab(0xFFFFFF);
        assertThat(white[0]).isCloseTo(100, within(0.01));
        assertThat(white[1]).isCloseTo(0, within(0.02));
        assertThat(white[2]).isCloseTo(0, within(0.02));
    }

    @Test
    void what_is_proposed_for_a_child_is_not_too_hard_and_the_next_grid_would_be() {
        Size size = Size.mm(300, 200);
        for (int years = 2; years <= 12; years++) {
            Difficulty.ForAge found = Difficulty.forAge(years, size, PictureAlikeness.CLEAR, Length.mm(18));
            CutPattern pattern =
                    PatternMaker.make(PatternSpec.of(size, found.grid(), 5).withStyle(found.style()));
            assertThat(Difficulty.of(pattern, PictureAlikeness.CLEAR).suits(years))
                    .as("%d years", years)
                    .isTrue();
        }
        assertThat(Difficulty.forAge(8, size, PictureAlikeness.CLEAR, Length.mm(10))
                        .grid()
                        .pieces())
                .isBetween(100, 150);
        // of one colour a child of eight gets fewer pieces
        assertThat(Difficulty.forAge(8, size, 1, Length.mm(10)).grid().pieces()).isLessThan(80);
        assertThat(Difficulty.forAge(3, size, PictureAlikeness.CLEAR, Length.mm(10))
                        .style())
                .isEqualTo(CutStyle.STRAIGHT);
    }

    @Test
    void children_of_rising_age_get_no_fewer_pieces() {
        List<Integer> counts = new ArrayList<>();
        for (int years = 2; years <= 14; years++) {
            counts.add(Difficulty.forAge(years, Size.mm(420, 297), PictureAlikeness.CLEAR, Length.mm(15))
                    .grid()
                    .pieces());
        }
        assertThat(counts).isSortedAccordingTo(Comparator.naturalOrder());
        assertThatThrownBy(() -> Difficulty.forAge(2, Size.mm(3000, 40), 1, Length.mm(10)))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("pattern.hard.none");
    }
}
