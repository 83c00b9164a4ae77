package puzzleworkshop.offers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.algorithm.distance.DiscreteHausdorffDistance;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.PieceOrders.Wanted;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.judged.LostPiece.Today;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class PieceOrdersIT {

    private static final int LOST = 9;

    @Autowired
    BeanFactory beans;

    @Autowired
    PieceOrders pieces;

    @Autowired
    Confirmations confirmations;

    @Autowired
    Orders orders;

    @Autowired
    PatternCache patterns;

    @Autowired
    SheetRack rack;

    @Autowired
    Bench bench;

    @Autowired
    WeekPlan plan;

    private BenchOrders make;
    private Order old;
    private CutPattern pattern;

    @BeforeEach
    void an_order() {
        Machines machines = beans.getBean(Machines.class);
        if (machines.standard().isEmpty()) {
            machines.save(Machine.usual("Laser", beans.getBean(Workshop.class).currency()));
        }
        beans.getBean(SheetRack.class)
                .add(
                        Outline.rectangle(Size.mm(140, 120)),
                        BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                        Money.of("0.40", "EUR"),
                        "Robin");
        make = new BenchOrders(beans);
        old = make.confirmed("Ida Lund", plan.today().plusDays(20), 10);
        pattern = patterns.of(old.puzzle().pattern());
        // it was sent, and that was charged
        beans.getBean(JdbcClient.class).sql("""
            update customer_order set kept_price = jsonb_set(jsonb_set(kept_price,
                '{question,shippingCharge,amount}', '4.00'), '{question,postage,amount}', '4.00')
            where id = :id
            """).param("id", old.id().value()).update();
    }

    /** JTS puts the new piece into the hole that the old one left: its play is a kerf all round, as the old one's was. */
    @Test
    void a_lost_piece_becomes_an_order_that_goes_the_way_of_all_and_fits_its_hole() {
        Today today = Today.withKerf(old.puzzle().pattern().kerf());
        Order order = pieces.quote(BookingKey.fresh(), new Wanted(old.id(), LOST, today, false), "Robin");
        assertThat(order.price().net().isPositive()).isTrue();
        assertThat(orders.keptPrice(order.id()).question().shippingCharge())
                .as("it goes the way the old order went, and is charged as that was")
                .isEqualTo(orders.keptPrice(old.id()).question().shippingCharge())
                .isEqualTo(Money.of("4.00", "EUR"));
        assertThat(order.puzzle().pieces()).isOne();
        assertThat(order.approval())
                .as("the picture was approved with the old order")
                .isPresent();
        assertThat(pieces.of(old.id()))
                .extracting(PieceOrders.PieceOrder::number)
                .containsExactly(order.number());
        assertThat(pieces.pieceOf(order.id()).orElseThrow().piece()).isEqualTo(LOST);

        CutPattern made = patterns.of(order.puzzle().pattern());
        Bounds hole = pattern.pieces().get(LOST - 1).outline().bounds();
        double kerf = old.puzzle().pattern().kerf().mm();
        Geometry left = polygon(pattern.pieces().get(LOST - 1).outline().translated(-hole.minX(), -hole.minY()))
                .buffer(kerf / 2, 32);
        Geometry fresh = polygon(made.outline()).buffer(-kerf / 2, 32);
        assertThat(left.contains(fresh)).isTrue();
        assertThat(new DiscreteHausdorffDistance(left.getBoundary(), fresh.getBoundary()).orientedDistance())
                .isLessThan(kerf + 0.15);
        assertThat(left.getBoundary().distance(fresh.getBoundary())).isCloseTo(kerf, within(0.02));

        confirmations.confirm(order.id(), "Robin");
        assertThat(rack.heldFor(java.util.List.of(order.id())).get(order.id())).hasSize(1);
        make.bringTo(order.id(), Stage.CUT);
        assertThat(orders.get(order.id()).next()).hasValue(Stage.CUT);
    }

    /** The frame is checked by hand: the old crop's share of the old picture, at the middle of the piece. */
    @Test
    void its_print_shows_what_the_old_picture_showed_there_at_the_same_size() {
        Today today = Today.withKerf(old.puzzle().pattern().kerf());
        Order order = pieces.quote(BookingKey.fresh(), new Wanted(old.id(), LOST, today, false), "Robin");
        Crop whole = old.picture().orElseThrow().crop();
        Crop part = order.picture().orElseThrow().crop();
        Bounds hole = pattern.pieces().get(LOST - 1).outline().bounds();
        double widthMm = old.puzzle().finished().width().mm();
        assertThat((part.left() - whole.left()) / whole.width() * widthMm).isCloseTo(hole.minX(), within(1e-6));
        assertThat(part.width() / whole.width() * widthMm).isCloseTo(hole.width(), within(1e-6));
        assertThat(order.puzzle().finished().width().mm()).isCloseTo(hole.width(), within(1e-6));
    }

    @Test
    void what_broke_here_costs_the_customer_nothing_and_a_piece_of_a_piece_is_refused() {
        Today today = Today.withKerf(old.puzzle().pattern().kerf());
        Order order = pieces.quote(BookingKey.fresh(), new Wanted(old.id(), LOST, today, true), "Robin");
        assertThat(order.price().gross().rounded().isZero()).isTrue();
        assertThat(orders.keptPrice(order.id()).question().postage())
                .as("sending it costs the workshop what sending costs")
                .isEqualTo(Money.of("4.00", "EUR"));
        confirmations.confirm(order.id(), "Robin");
        assertThatThrownBy(() -> pieces.offer(new Wanted(order.id(), 1, today, true)))
                .isInstanceOf(Refused.class);
    }

    private static Geometry polygon(CurvePath line) {
        return new GeometryFactory()
                .createPolygon(line.flattened(0.005).stream()
                        .map(p -> new Coordinate(p.xMm(), p.yMm()))
                        .toArray(Coordinate[]::new));
    }
}
