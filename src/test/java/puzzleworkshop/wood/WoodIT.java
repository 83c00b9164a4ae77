package puzzleworkshop.wood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import javax.sql.DataSource;
import org.assertj.core.groups.Tuple;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.boards.LeftPart;
import puzzleworkshop.boards.WhatIsLeft;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.geometry.fit.Sawing;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetHolds;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.RemainderWorth;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;
import puzzleworkshop.wood.asked.AskedFor;
import puzzleworkshop.wood.asked.AskedSize;
import puzzleworkshop.wood.asked.KindAsked;
import puzzleworkshop.workshop.Workshop;

/** Demand, worth, advice and months from what lies in the database. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class WoodIT {

    private static final Size A4 = Size.mm(319, 232);
    private static final RackFilter ALL =
            new RackFilter("", Optional.empty(), Optional.empty(), Optional.empty(), Set.of(SheetState.FREE));

    @Autowired
    AskedFor asked;

    @Autowired
    WoodAdvice advice;

    @Autowired
    Dealers dealers;

    @Autowired
    BoardsOnTheWay onTheWay;

    @Autowired
    YearAgain again;

    @Autowired
    RemainderWorth worth;

    @Autowired
    SheetFinder finder;

    @Autowired
    SheetHolds holds;

    @Autowired
    SheetRack rack;

    @Autowired
    WhatIsLeft left;

    @Autowired
    RackSettings settings;

    @Autowired
    Workshop workshop;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource database;

    @BeforeEach
    void a_workshop_that_sells_boards() {
        CleanDatabase.now(database);
        settings.save(new BoardOffer(
                0,
                "birch ply 800 × 600",
                "birch-ply",
                Grade.CRAFT,
                Length.mm(3),
                Size.mm(800, 600),
                Grain.NONE,
                Money.of(new java.math.BigDecimal("9.00"), workshop.currency()),
                true));
    }

    @Test
    void what_was_confirmed_is_what_is_asked_for_until_the_owner_knows_better() {
        confirmed(24, 12);
        AskedSize learned = size();
        assertThat(learned.learned().seen()).isEqualTo(24);
        assertThat(learned.perWeek()).isBetween(1.6, 2.4);
        asked.correct(A4.turned(), 5, "Robin");
        assertThat(size().perWeek()).isEqualTo(5);
        asked.uncorrect(A4);
        assertThat(size().perWeek()).isEqualTo(learned.perWeek());
        assertThatThrownBy(() -> asked.correct(A4, -1, "Robin")).isInstanceOf(Refused.class);
    }

    @Test
    void remainders_are_valued_by_what_is_asked_for_once_enough_was() {
        assertThat(worth.ladder(List.of())).isEmpty();
        confirmed(24, 12);
        RemainderWorth.Ladder ladder = worth.ladder(List.of()).orElseThrow();
        int a4 = ladder.sizes().rungs().indexOf(A4);
        assertThat(ladder.expected().get(a4)).isGreaterThan(5);
        assertThat(ladder.sizes().value(1, a4)).isGreaterThan(ladder.sizes().value(1, 0) - 1e-9);
        assertThat(worth.ladder(List.of()).orElseThrow()).isEqualTo(ladder);
    }

    @Test
    void a_sheet_is_proposed_with_what_it_keeps_for_the_next_weeks() {
        confirmed(24, 12);
        sheet(700, 340);
        sheet(420, 260);
        var found = finder.suggest(BlankWish.of(A4, Length.mm(3)));
        assertThat(found).hasSize(2);
        assertThat(found.stream().map(one -> one.reason().key()))
                .anyMatch(key -> key.startsWith("sheets.reason.keeps"));
    }

    @Test
    void boards_are_advised_and_joined_to_the_months_and_the_year_is_played_again() {
        confirmed(60, 20);
        sheet(500, 400);
        BuyAdvice buy = advice.buy().getFirst();
        assertThat(buy.possible()).isTrue();
        assertThat(buy.isDue()).isTrue();
        assertThat(buy.service().hundredths().doubleValue()).isGreaterThanOrEqualTo(90);
        assertThat(advice.months().getLast().bought().mm2()).isEqualTo(500 * 400);
        Replay replay = again.replay().orElseThrow();
        assertThat(replay.blanks()).isEqualTo(60);
        assertThat(replay.nearest().cost().isPositive()).isTrue();
    }

    @Test
    void pieces_that_are_too_many_are_proposed_to_go_and_still_lie_there() {
        confirmed(24, 12);
        sheet(110, 90);
        sheet(500, 400);
        sheet(60, 50);
        advice.save(new WoodRules(2, 6, 2, 90));
        KeepAdvice keep = advice.keep();
        assertThat(keep.spare()).hasSize(1);
        assertThat(keep.spare().getFirst().sheet().outline().area().mm2()).isEqualTo(60 * 50);
        assertThat(advice.keep().pieces()).isEqualTo(3);
    }

    @Test
    void what_is_asked_for_on_one_kind_of_board_is_planned_on_that_kind() {
        confirmed(24, 12);
        BoardOffer thin = settings.offers().getFirst();
        settings.save(new BoardOffer(
                0,
                "birch ply 4 mm",
                thin.material(),
                thin.grade(),
                Length.mm(4),
                thin.size(),
                thin.grain(),
                thin.price(),
                true));
        jdbc.sql("update customer_order set board_thickness_mm = 4 where id % 4 = 0")
                .update();
        List<KindAsked> kinds = asked.kinds();
        assertThat(kinds).extracting(kind -> kind.kind().thickness().mm()).containsExactly(3.0, 4.0);
        assertThat(kinds.getFirst().learned().seen()).isEqualTo(18);
        assertThat(kinds.getLast().learned().seen()).isEqualTo(6);
        asked.correct(A4, 8, "Robin");
        assertThat(perWeek(kinds.getFirst())).isEqualTo(6);
        assertThat(perWeek(kinds.getLast())).isEqualTo(2);
        assertThat(advice.buy()).extracting(buy -> buy.kind().thickness().mm()).containsExactly(3.0, 4.0);
    }

    private double perWeek(KindAsked kind) {
        return asked.sizes(kind.kind()).getFirst().perWeek();
    }

    @Test
    void a_dealer_who_cuts_to_size_and_delivers_at_once_is_weighed_against_whole_boards() {
        confirmed(60, 20);
        BuyAdvice before = advice.buy().getFirst();
        assertThat(before.lines()).hasSize(1);
        assertThat(before.lines().getFirst().weeks()).isEqualTo(advice.rules().deliveryWeeks());
        assertThat(before.orderBy()).contains(workshop.today());
        long board = settings.offers().getFirst().id();
        dealers.save(new Dealing(board, OptionalInt.of(0), Optional.of(new BigDecimal("0.10"))));
        BuyAdvice after = advice.buy().getFirst();
        assertThat(after.lines()).extracting(BuyAdvice.Line::cutTo).containsExactly(Optional.empty(), Optional.of(A4));
        // 9.00 for 800 × 600 mm: a piece of 319 × 232 mm is its 0.1542nd part, 1.39, and 0.10 for the cut.
        assertThat(after.lines().getLast().price().amount()).isEqualByComparingTo("1.49");
        assertThat(after.lines()).allMatch(line -> line.weeks() == 0);
        assertThat(after.cost().compareTo(before.cost())).isNegative();
        assertThatThrownBy(() -> dealers.save(new Dealing(board, OptionalInt.of(27), Optional.empty())))
                .isInstanceOf(Refused.class);
    }

    /** By hand: a board of 800 × 600 gives at least four A4 blanks, five boards twenty; three a week in three weeks are about nine. */
    @Test
    void a_whole_board_counts_with_all_its_wood_when_boards_are_advised() {
        confirmed(60, 20);
        heldByNobodyElse();
        for (int i = 0; i < 5; i++) {
            sheet(800, 600);
        }
        BuyAdvice buy = advice.buy().getFirst();
        assertThat(buy.isDue()).isFalse();
        assertThat(buy.without().hundredths().doubleValue()).isGreaterThan(95);
    }

    @Test
    void boards_of_another_kind_change_nothing_in_what_a_piece_is_worth() {
        confirmed(24, 12);
        BlankWish birch = BlankWish.of(A4, Length.mm(3));
        RemainderWorth.Ladder before = worth.ladder(List.of(birch)).orElseThrow();
        for (int i = 0; i < 30; i++) {
            sheet(330, 240);
        }
        jdbc.sql("update sheet set material = 'mdf', nominal_mm = 6, version = version + 1")
                .update();
        assertThat(worth.ladder(List.of(birch))).contains(before);
        assertThat(worth.ladder(List.of(BlankWish.of(A4, Length.mm(6))))).isEmpty();
        jdbc.sql("update sheet set material = 'birch-ply', nominal_mm = 3, version = version + 1")
                .update();
        int a4 = before.sizes().rungs().indexOf(A4);
        assertThat(worth.ladder(List.of(birch)).orElseThrow().sizes().value(1, a4))
                .isLessThan(before.sizes().value(1, a4));
    }

    /** So that a rack of thousands need not be played again after each cut. */
    @Test
    void one_piece_more_of_what_there_is_plenty_of_changes_no_worth() {
        confirmed(24, 12);
        for (int i = 0; i < 60; i++) {
            sheet(319, 232);
        }
        RemainderWorth.Ladder before = worth.ladder(List.of()).orElseThrow();
        sheet(325, 240);
        assertThat(worth.ladder(List.of())).containsSame(before);
    }

    /** A block of five by two with one margin around it. */
    @Test
    void a_block_of_ten_is_ten_blanks_asked_for_and_a_cancelled_order_none() {
        confirmed(1, 1);
        double around = 2 * workshop.tradeNumbers().holdDownMargin().mm();
        jdbc.sql("update order_blank set across = 5, down = 2, width_mm = :w, height_mm = :h")
                .param("w", 5 * (319 - around) + around)
                .param("h", 2 * (232 - around) + around)
                .update();
        assertThat(size().learned().seen()).isEqualTo(10);
        assertThat(asked.sizes()).hasSize(1);
        jdbc.sql("update customer_order set state = 'CANCELLED', next_stage = null")
                .update();
        assertThat(asked.sizes()).allMatch(one -> one.learned().seen() == 0);
    }

    @Test
    void usual_sizes_that_are_changed_change_what_a_new_workshop_starts_from() {
        assertThat(asked.sizes()).hasSizeGreaterThan(1);
        settings.saveStandardBlanks(List.of(A4));
        assertThat(asked.sizes()).extracting(AskedSize::size).containsExactly(A4);
    }

    @Test
    void the_owner_knows_a_kind_of_board_better() {
        confirmed(24, 12);
        KindAsked kind = asked.kinds().getFirst();
        asked.correct(kind.kind(), 10, "Robin");
        assertThat(asked.kinds().getFirst().perWeek()).isEqualTo(10);
        assertThat(perWeek(kind)).isEqualTo(10);
        asked.uncorrect(kind.kind());
        assertThat(perWeek(kind)).isEqualTo(kind.perWeek());
    }

    @Test
    void boards_that_were_ordered_are_not_advised_again_and_lie_in_the_rack_when_they_have_come() {
        confirmed(60, 20);
        heldByNobodyElse();
        BuyAdvice.Line due = advice.buy().getFirst().lines().getFirst();
        assertThat(due.count()).isPositive();
        long id = onTheWay.ordered(BookingKey.fresh(), due, due.count(), "Robin");
        assertThat(advice.buy().getFirst().isDue()).isFalse();
        assertThat(advice.buy().getFirst().onTheWay()).isEqualTo(due.count());
        assertThat(onTheWay.all()).hasSize(1);
        assertThat(onTheWay.arrived(BookingKey.fresh(), id, "B2", "Robin")).isEqualTo(due.count());
        assertThat(onTheWay.all()).isEmpty();
        assertThat(jdbc.sql("select count(*) from sheet where state = 'FREE' and place = 'B2' and cost = 9")
                        .query(Integer.class)
                        .single())
                .isEqualTo(due.count());
        assertThat(advice.buy().getFirst().isDue()).isFalse();
        assertThatThrownBy(() -> onTheWay.notComing(BookingKey.fresh(), id)).isInstanceOf(Refused.class);
    }

    @Test
    void what_a_proposed_sheet_would_leave_is_what_is_left_at_the_cut_each_part_with_a_reason() {
        confirmed(24, 12);
        sheet(700, 340);
        Suggestion found = finder.suggest(BlankWish.of(A4, Length.mm(3)), 1).getFirst();
        SheetId sheet = found.sheet().id();
        holds.hold(sheet, PlainOrders.add(jdbc, 1).getFirst(), found.placement(), found.blank(), "Robin");
        Remainder cut = holds.proposal(sheet);
        assertThat(cut.parts())
                .extracting(Remainder.Part::outline, Remainder.Part::useful, Remainder.Part::rung)
                .containsExactlyElementsOf(found.remainder().parts().stream()
                        .map(part -> Tuple.tuple(part.outline(), part.useful(), part.rung()))
                        .toList());
        assertThat(left.of(sheet)).hasSameSizeAs(cut.parts()).allMatch(LeftPart::keep);
        assertThat(left.of(sheet).getFirst().why().key()).isEqualTo("sheets.reason.keeps");
    }

    /** By hand: 319 × 232 from the corner of 800 × 600 leaves an L, sawn along one leg or along the other. */
    @Test
    void what_is_left_in_an_l_is_sawn_as_the_next_weeks_want_it_with_a_reason() {
        confirmed(24, 12);
        sheet(800, 600);
        SheetId sheet = rack.list(ALL, 0, 1).getFirst().id();
        holds.hold(sheet, PlainOrders.add(jdbc, 1).getFirst(), new Placement(0, 0, 0), A4, "Robin");
        LeftPart part = left.of(sheet).getFirst();
        assertThat(part.sawing().orElseThrow().key()).startsWith("sheets.saw");
        List<Sawing> ways = Sawing.ways(
                part.part().outline(),
                worth.ladder(List.of(BlankWish.of(A4, Length.mm(3))))
                        .orElseThrow()
                        .sizes());
        assertThat(ways).hasSizeGreaterThan(1);
        assertThat(part.part().useful()).isEqualTo(ways.getFirst().pieces());
        assertThat(ways)
                .allMatch(way -> way.value().mm2() <= ways.getFirst().value().mm2() + 1);
    }

    @Test
    void a_full_rack_does_not_keep_what_it_has_enough_of_and_one_with_room_does() {
        confirmed(24, 12);
        for (int i = 0; i < 30; i++) {
            sheet(340, 240);
        }
        sheet(700, 340);
        Sheet large = rack.list(ALL, 0, 1).getFirst();
        assertThat(large.outline().area().mm2()).isEqualTo(700 * 340);
        holds.hold(large.id(), PlainOrders.add(jdbc, 1).getFirst(), new Placement(0, 0, 0), A4, "Robin");
        assertThat(left.of(large.id()).getFirst().why().key()).isEqualTo("sheets.keep.room");
        advice.save(new WoodRules(31, 6, 2, 90));
        assertThat(left.of(large.id()).getFirst().why().key()).isEqualTo("sheets.keep.enough");
        assertThat(left.of(large.id()).getFirst().keep()).isFalse();
    }

    /** By hand: two A4 a week are about 52 in the half year; of 80 pieces of A4 some twenty are cut in no course. */
    @Test
    void of_many_alike_pieces_those_that_are_not_needed_are_proposed_and_held_ones_count_as_lying_there() {
        confirmed(24, 12);
        for (int i = 0; i < 80; i++) {
            sheet(319, 232);
        }
        sheet(500, 400);
        SheetId held = rack.list(ALL, 0, 1).getFirst().id();
        holds.hold(held, PlainOrders.add(jdbc, 1).getFirst(), new Placement(0, 0, 0), A4, "Robin");
        advice.save(new WoodRules(71, 6, 2, 90));
        KeepAdvice keep = advice.keep();
        assertThat(keep.pieces()).isEqualTo(81);
        assertThat(keep.spare()).hasSize(10).allSatisfy(spare -> {
            assertThat(spare.sheet().outline().area().mm2()).isEqualTo(319 * 232);
            assertThat(spare.why()).isEqualTo(Sentence.of("wood.keep.spare", A4, "0", 26, Money.of("0.00", "EUR")));
        });
        advice.save(new WoodRules(11, 6, 2, 90));
        assertThat(advice.keep().spare().getLast().why())
                .isNotEqualTo(Sentence.of("wood.keep.spare", A4, "0", 26, Money.of("0.00", "EUR")));
    }

    /** Orders that are past the saw wait for no board. */
    private void heldByNobodyElse() {
        jdbc.sql("update customer_order set approved_at = confirmed_at, approved_by = 'Ada', next_stage = 'CUT'")
                .update();
    }

    private AskedSize size() {
        return asked.sizes().stream()
                .filter(one -> one.size().equals(A4))
                .findFirst()
                .orElseThrow();
    }

    /** Orders of one A4 blank each, spread evenly over the last weeks. */
    private void confirmed(int count, int weeks) {
        List<OrderRef> orders = PlainOrders.add(jdbc, count);
        long offer =
                jdbc.sql("select min(id) from board_offer").query(Long.class).single();
        for (int i = 0; i < count; i++) {
            jdbc.sql("""
                insert into order_blank (order_id, position, part, across, down, width_mm, height_mm, x_mm, y_mm, degrees,
                    offer_id)
                values (:order, 1, 'PUZZLE', 1, 1, 319, 232, 0, 0, 0, :offer)
                """)
                    .param("order", orders.get(i).id().value())
                    .param("offer", offer)
                    .update();
            jdbc.sql("""
                update customer_order set state = 'CONFIRMED', next_stage = 'PRINT', promised_on = current_date,
                    confirmed_at = :now::timestamptz - make_interval(days => :days)
                where id = :order
                """)
                    .param("now", workshop.today().atTime(12, 0) + "Z")
                    .param("days", (count - 1 - i) * weeks * 7 / count)
                    .param("order", orders.get(i).id().value())
                    .update();
        }
    }

    private void sheet(int w, int h) {
        jdbc.sql("""
            insert into sheet (outline, width_mm, height_mm, area_mm2, material, grade, nominal_mm, past, grain, cost,
                currency, state, entered_at, state_since)
            values (:outline, :w, :h, :area, 'birch-ply', 'CRAFT', 3, 'CLEAN', 'NONE', 1, :currency, 'FREE',
                :now::timestamptz, :now::timestamptz)
            """)
                .param("outline", "0,0 " + w + ",0 " + w + "," + h + " 0," + h)
                .param("w", w)
                .param("h", h)
                .param("area", (double) w * h)
                .param("currency", workshop.currency().getCurrencyCode())
                .param("now", workshop.today().atTime(10, 0) + "Z")
                .update();
    }
}
