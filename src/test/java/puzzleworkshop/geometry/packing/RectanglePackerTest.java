package puzzleworkshop.geometry.packing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.support.Seeds;

@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class RectanglePackerTest {

    private static final RectanglePacker PACKER = RectanglePacker.withGap(0).effort(8_000_000);

    /** ISO 216: the next smaller size is half of the larger, rounded down, so 2^n of them always fit. */
    @Test
    void two_A4_fill_an_A3_and_sixteen_an_A0() {
        Packed onA3 = PACKER.onSheets(Collections.nCopies(2, PackItem.of(210, 297)), 297, 420, List.of());
        assertThat(onA3.sheets()).isEqualTo(1);
        Packed onA0 = PACKER.onSheets(Collections.nCopies(16, PackItem.of(210, 297)), 841, 1189, List.of());
        assertThat(onA0.sheets()).isEqualTo(1);
        Packed oneMore = PACKER.onSheets(Collections.nCopies(17, PackItem.of(210, 297)), 841, 1189, List.of());
        assertThat(oneMore.sheets()).isEqualTo(2);
        assertThat(oneMore.provenBest()).isTrue();
    }

    /** Moroń 1925: nine different squares fill a rectangle of 33 × 32 (from memory). */
    @Test
    void nine_squares_fill_Moron_s_rectangle() {
        assertSquaresFill(33, 32, 18, 15, 14, 10, 9, 8, 7, 4, 1);
    }

    /** Duijvestijn 1978: the smallest perfect squared square, order 21, side 112 (from memory). */
    @Test
    void twenty_one_squares_fill_Duijvestijn_s_square() {
        assertSquaresFill(112, 112, 50, 42, 37, 35, 33, 29, 27, 25, 24, 19, 18, 17, 16, 15, 11, 9, 8, 7, 6, 4, 2);
    }

    private static void assertSquaresFill(double width, double length, int... sides) {
        List<PackItem> pieces =
                IntStream.of(sides).mapToObj(side -> PackItem.of(side, side)).toList();
        Packed packed = RectanglePacker.withGap(0).onRoll(pieces, width, List.of());
        assertThat(packed.length()).isEqualTo(length);
        assertThat(packed.provenBest()).isTrue();
        assertThat(LayoutJudge.fault(pieces, packed.spots(), width, length, 0)).isEmpty();
    }

    /** Smallest rectangles around squares of sides 1 to n: Korf, Optimal Rectangle Packing, ICAPS 2003 (from memory). */
    @Test
    void squares_of_sides_1_to_n_need_what_Korf_found() {
        int[][] known = {{5, 5, 12}, {6, 9, 11}, {7, 7, 22}, {8, 14, 15}};
        for (int[] k : known) {
            List<PackItem> pieces = IntStream.rangeClosed(1, k[0])
                    .mapToObj(side -> PackItem.of(side, side))
                    .toList();
            Packed packed = RectanglePacker.withGap(0).onRoll(pieces, k[1], List.of());
            assertThat(packed.length()).as("squares 1 to " + k[0]).isEqualTo(k[2]);
            assertThat(packed.provenBest()).as("proof for squares 1 to " + k[0]).isTrue();
        }
    }

    /** Zero-waste strips made by cutting a rectangle: the optimum is known by construction. */
    @Test
    void strips_cut_from_one_rectangle_are_put_together_again() {
        for (int pieces : new int[] {6, 9, 12, 16, 20}) {
            for (long seed = 100; seed < 106; seed++) {
                PackingInstance instance = PackingInstance.cutFromOne(40, 24, pieces, seed);
                Packed packed = PACKER.onRoll(instance.pieces(), instance.width(), List.of());
                assertThat(packed.length()).as(instance.name()).isEqualTo(24);
                assertThat(LayoutJudge.fault(instance.pieces(), packed.spots(), 40, 24, 0))
                        .as(instance.name())
                        .isEmpty();
            }
        }
    }

    @Test
    void random_pieces_never_overlap_nor_leave_the_sheet_and_keep_the_gap() {
        for (long seed = 0; seed < 300; seed++) {
            SplittableRandom random = new SplittableRandom(Seeds.from(seed));
            double gap = random.nextInt(3) == 0 ? 0 : random.nextDouble(6);
            double width = 100 + random.nextDouble(300);
            double height = 100 + random.nextDouble(400);
            List<PackItem> pieces = pieces(random, 1 + random.nextInt(25), width, height);
            RectanglePacker packer = RectanglePacker.withGap(gap).effort(300_000);
            Packed sheets = packer.onSheets(pieces, width, height, List.of());
            assertThat(LayoutJudge.fault(pieces, sheets.spots(), width, height, gap))
                    .as("seed " + seed)
                    .isEmpty();
            assertThat(sheets.fewestSheets()).as("seed " + seed).isBetween(1, sheets.sheets());
            Packed roll = packer.onRoll(pieces, width, List.of());
            assertThat(LayoutJudge.fault(pieces, roll.spots(), width, roll.length() + 1e-9, gap))
                    .as("seed " + seed)
                    .isEmpty();
            assertThat(roll.leastLength()).as("seed " + seed).isLessThanOrEqualTo(roll.length() + 1e-9);
        }
    }

    @Test
    void pinned_pieces_stay_and_the_others_go_around_them() {
        for (long seed = 0; seed < 200; seed++) {
            SplittableRandom random = new SplittableRandom(Seeds.from(seed));
            double gap = random.nextDouble(4);
            List<PackItem> pieces = pieces(random, 3 + random.nextInt(15), 297, 420);
            PackItem first = pieces.get(0);
            PackedAt pin = new PackedAt(
                    0, 0, random.nextDouble(297 - first.width()), random.nextDouble(420 - first.height()), false);
            RectanglePacker packer = RectanglePacker.withGap(gap).effort(500_000);
            for (boolean roll : new boolean[] {false, true}) {
                Packed packed = roll
                        ? packer.onRoll(pieces, 297, List.of(pin))
                        : packer.onSheets(pieces, 297, 420, List.of(pin));
                assertThat(LayoutJudge.fault(
                                pieces, packed.spots(), 297, roll ? packed.length() + 0.01 : 420, gap - 0.003))
                        .as("seed " + seed)
                        .isEmpty();
                assertThat(packed.spots().get(0).x())
                        .as("seed " + seed)
                        .isEqualTo(pin.x(), org.assertj.core.data.Offset.offset(0.001));
                assertThat(packed.spots().get(0).y())
                        .as("seed " + seed)
                        .isEqualTo(pin.y(), org.assertj.core.data.Offset.offset(0.001));
            }
        }
    }

    @Test
    void pins_on_each_other_or_outside_are_refused() {
        List<PackItem> two = List.of(PackItem.of(100, 100), PackItem.of(100, 100));
        assertThatThrownBy(() -> PACKER.onSheets(
                        two, 200, 200, List.of(new PackedAt(0, 0, 0, 0, false), new PackedAt(1, 0, 50, 50, false))))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> PACKER.onSheets(two, 200, 200, List.of(new PackedAt(0, 0, 120, 0, false))))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void a_piece_larger_than_the_sheet_is_refused_and_no_pieces_need_no_sheet() {
        assertThatThrownBy(() -> PACKER.onSheets(List.of(PackItem.of(300, 430)), 297, 420, List.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("larger than the sheet");
        assertThat(PACKER.onSheets(List.of(), 297, 420, List.of()).sheets()).isZero();
        assertThat(PACKER.onRoll(List.of(), 297, List.of()).length()).isZero();
    }

    @Test
    void a_piece_that_may_not_be_turned_is_not() {
        List<PackItem> pieces = List.of(new PackItem(200, 50, false), new PackItem(50, 200, false));
        Packed packed = PACKER.onSheets(pieces, 200, 200, List.of());
        assertThat(packed.sheets()).isEqualTo(2);
        assertThat(packed.provenBest()).isTrue();
        assertThat(PACKER.onSheets(List.of(PackItem.of(200, 50), PackItem.of(50, 200)), 200, 200, List.of())
                        .sheets())
                .isEqualTo(1);
    }

    @Test
    void the_same_pieces_get_the_same_answer() {
        List<PackItem> pieces = pieces(new SplittableRandom(Seeds.from(7)), 30, 297, 420);
        assertThat(PACKER.onSheets(pieces, 297, 420, List.of()))
                .isEqualTo(PACKER.onSheets(pieces, 297, 420, List.of()));
    }

    static List<PackItem> pieces(SplittableRandom random, int count, double width, double height) {
        List<PackItem> pieces = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            pieces.add(new PackItem(
                    5 + random.nextDouble(width * 0.7),
                    5 + random.nextDouble(height * 0.6),
                    random.nextInt(4) > 0 && width * 0.7 + 5 < height && height * 0.6 + 5 < width));
        }
        return pieces;
    }
}
