package puzzleworkshop.offers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.Resolution;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.TradeNumbers;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OfferDeskIT {

    private static final Size FINISHED = Size.mm(300, 200);
    private static final BoardKind BIRCH = new BoardKind("birch-ply", "CRAFT", Length.mm(3));

    @Autowired
    private OfferDesk desk;

    @Autowired
    private Machines machines;

    @Autowired
    private RackSettings settings;

    @Autowired
    private SheetRack rack;

    @Autowired
    private Pictures pictures;

    @Autowired
    private Workshop workshop;

    @Autowired
    private javax.sql.DataSource dataSource;

    @BeforeEach
    void begin() {
        CleanDatabase.now(dataSource);
        machines.save(Machine.usual("Laser", workshop.currency()));
        settings.save(new BoardOffer(
                0,
                "Birch 600 × 400",
                "birch-ply",
                Grade.CRAFT,
                Length.mm(3),
                Size.mm(600, 400),
                Grain.NONE,
                Money.of(new java.math.BigDecimal("8"), workshop.currency()),
                true));
    }

    @Test
    void a_wish_gets_pattern_board_price_and_no_complaint() {
        Offer offer = desk.workOut(wish(FINISHED, 48, 1));
        assertThat(offer.complaints()).isEmpty();
        assertThat(offer.canBeQuoted()).isTrue();
        assertThat(offer.pattern().orElseThrow().pieces()).hasSize(48);
        assertThat(offer.price().orElseThrow().answer().toPay().isPositive()).isTrue();
        assertThat(offer.ready()).isPresent();
    }

    /** 300 × 200 mm hold 10 × 6 pieces of 30 mm and more. */
    @Test
    void no_piece_is_offered_with_a_side_below_the_one_in_set_up() {
        Offer usual = desk.workOut(wish(FINISHED, 500, 1));
        assertThat(usual.pattern().orElseThrow().pieces().size()).isGreaterThan(400);
        TradeNumbers numbers = workshop.tradeNumbers();
        workshop.save(new TradeNumbers(
                numbers.overhang(),
                numbers.holdDownMargin(),
                numbers.stickShift(),
                numbers.stickTurnDegrees(),
                numbers.sharpPpi(),
                numbers.goodPpi(),
                numbers.softPpi(),
                Length.mm(30),
                numbers.boardThickness(),
                numbers.smallestUseful(),
                numbers.bufferDays(),
                numbers.quoteValidDays(),
                numbers.outlineLast()));
        PieceGrid grid = desk.workOut(wish(FINISHED, 500, 1))
                .pattern()
                .orElseThrow()
                .spec()
                .grid();
        assertThat(grid.pieceSize(FINISHED).shorterSide().mm()).isGreaterThanOrEqualTo(30 - 1e-9);
        assertThat(grid.pieces()).isEqualTo(60);
    }

    /** 2.54 mm are a tenth of an inch: 3,000 px over 254 mm are 300 pixels per inch (1 in = 25.4 mm exactly). */
    @Test
    void resolution_is_counted_at_the_finished_size() throws IOException {
        Picture picture = picture(3000, 2000);
        Size size = Size.mm(254, 169.333333);
        Offer offer = desk.workOut(with(wish(size, 48, 1), picture, size));
        assertThat(offer.resolution().orElseThrow().ppi()).isCloseTo(300, within(0.5));
        assertThat(offer.resolution().orElseThrow().verdict()).isEqualTo(Resolution.Verdict.SHARP);
    }

    @Test
    void a_picture_under_the_limit_is_refused_until_the_customer_accepts_it_in_writing() throws IOException {
        Picture picture = picture(600, 400);
        Wish wish = with(wish(FINISHED, 48, 1), picture, FINISHED);
        assertThat(desk.workOut(wish).complaints()).containsKey(Offer.Question.PICTURE);
        Wish accepted = new Wish(
                wish.puzzle(),
                wish.quantity(),
                wish.board(),
                wish.sheet(),
                wish.picture(),
                "fine for us, mail of 3 May",
                wish.day(),
                wish.terms());
        assertThat(desk.workOut(accepted).complaints()).isEmpty();
    }

    @Test
    void the_smaller_of_two_offcuts_that_fit_is_taken_and_a_new_board_is_named_when_none_does() {
        assertThat(desk.workOut(wish(FINISHED, 48, 1)).boards().orElseThrow().boardsToBuy())
                .isEqualTo(1);
        rack.add(sheet(400, 390), BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)), money("8"), "test");
        var small =
                rack.add(sheet(330, 230), BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)), money("2"), "test");
        BlankPlan plan = desk.workOut(wish(FINISHED, 48, 1)).boards().orElseThrow();
        assertThat(plan.boardsToBuy()).isZero();
        assertThat(plan.blocks().getFirst().sheet().orElseThrow().sheet().id()).isEqualTo(small);
    }

    /** Common practice: finished size, overhang 3 mm and margin 8 mm on every side: 300 × 200 needs 322 × 222. */
    @Test
    void the_blank_is_the_finished_size_with_overhang_and_margin() {
        assertThat(BlankPlan.blockSize(workshop.tradeNumbers(), FINISHED, 1, 1)).isEqualTo(Size.mm(322, 222));
        assertThat(BlankPlan.blockSize(workshop.tradeNumbers(), FINISHED, 2, 1)).isEqualTo(Size.mm(628, 222));
    }

    @Test
    void many_small_puzzles_are_cut_in_blocks_and_none_is_forgotten() {
        Offer offer = desk.workOut(wish(Size.mm(100, 100), 9, 25));
        BlankPlan plan = offer.boards().orElseThrow();
        assertThat(plan.missing()).isZero();
        assertThat(plan.blocks().stream().mapToInt(BlankPlan.Block::count).sum())
                .isEqualTo(25);
        assertThat(plan.blocks().size()).isLessThan(25);
        assertThat(offer.complaints()).isEmpty();
    }

    @Test
    void every_impossible_wish_is_refused_beside_its_question() {
        assertThat(desk.workOut(wish(Size.mm(20, 20), 4, 1)).complaints()).containsKey(Offer.Question.SIZE);
        assertThat(desk.workOut(wish(Size.mm(900, 700), 48, 1)).complaints()).containsKey(Offer.Question.SIZE);
        assertThat(desk.workOut(wish(FINISHED, 1, 1)).complaints()).containsKey(Offer.Question.PIECES);
        assertThat(desk.workOut(wish(Size.mm(60, 60), 1500, 1))
                        .pattern()
                        .map(p -> p.pieces().size())
                        .orElse(0))
                .as("never pieces under 10 mm")
                .isLessThanOrEqualTo(36);
        assertThat(desk.workOut(wish(FINISHED, 48, 0)).complaints()).containsKey(Offer.Question.PIECES);
        Wish late = wish(FINISHED, 48, 1);
        Wish past = new Wish(
                late.puzzle(),
                late.quantity(),
                late.board(),
                late.sheet(),
                late.picture(),
                late.softAccepted(),
                new Wish.Day(
                        Optional.of(LocalDate.of(2020, 1, 1)),
                        late.day().rush(),
                        late.day().way()),
                late.terms());
        assertThat(desk.workOut(past).complaints()).containsKey(Offer.Question.WANTED_BY);
    }

    @Test
    void a_size_that_no_sheet_and_no_board_to_buy_gives_is_said() {
        Wish thick = wish(FINISHED, 48, 1);
        Wish other = new Wish(
                thick.puzzle(),
                thick.quantity(),
                new BoardKind("birch-ply", "CRAFT", Length.mm(9)),
                thick.sheet(),
                thick.picture(),
                thick.softAccepted(),
                thick.day(),
                thick.terms());
        Offer offer = desk.workOut(other);
        assertThat(offer.complaints()).containsKey(Offer.Question.BOARD);
        assertThat(offer.canBeQuoted()).isFalse();
    }

    private Wish wish(Size size, int pieces, int quantity) {
        return new Wish(
                PuzzleWish.plain(
                        size,
                        pieces,
                        CutStyle.KNOBS,
                        puzzleworkshop.pattern.PuzzleEdge.square(),
                        7,
                        IntendedAge.GROWN_UPS,
                        false),
                quantity,
                BIRCH,
                Optional.empty(),
                Optional.empty(),
                "",
                Wish.Day.ANY,
                Wish.Terms.usual(workshop.currency()));
    }

    private static Wish with(Wish wish, Picture picture, Size size) {
        return new Wish(
                wish.puzzle().sized(size),
                wish.quantity(),
                wish.board(),
                wish.sheet(),
                Optional.of(new FramedPicture(picture.id(), Crop.filling(picture, size.aspect()))),
                "",
                wish.day(),
                wish.terms());
    }

    private Picture picture(int width, int height) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < width; x += 7) {
            for (int y = 0; y < height; y++) {
                image.setRGB(x, y, 0xC0A080 + x % 97);
            }
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "jpeg", bytes);
        return pictures.take("plain.jpg", new ByteArrayInputStream(bytes.toByteArray()));
    }

    private static puzzleworkshop.geometry.Outline sheet(double width, double height) {
        return puzzleworkshop.geometry.Outline.rectangle(Size.mm(width, height));
    }

    private Money money(String amount) {
        return Money.of(new java.math.BigDecimal(amount), workshop.currency());
    }
}
