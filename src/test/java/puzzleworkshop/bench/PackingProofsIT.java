package puzzleworkshop.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.camera.PieceScenes;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.pieces.PieceCheck;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.history.OrderHistory;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.pattern.mesh.PatternMaker;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.support.DatabaseTest;

/** The camera of {@link RenderedPhoto} (Brown and Conrady's lens) looks at the pieces of an order, one of them taken away. */
@DatabaseTest
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PackingProofsIT {

    private static final int GONE = 9;

    @Autowired
    BeanFactory beans;

    @Autowired
    PackingProofs proofs;

    @Autowired
    PatternCache patterns;

    @Autowired
    OrderHistory history;

    @Autowired
    WeekPlan plan;

    @Autowired
    JdbcClient jdbc;

    @Test
    void the_piece_taken_away_is_named_a_foreign_one_is_said_and_the_photo_stays_with_the_order() {
        Order order = new BenchOrders(beans).confirmed("Ida Lund", plan.today().plusDays(20), 10);
        CutPattern pattern = patterns.of(order.puzzle().pattern());
        List<Piece> lying = new ArrayList<>(pattern.pieces());
        lying.removeIf(piece -> piece.number() == GONE);
        PatternSpec spec = pattern.spec();
        Piece stranger = PatternMaker.make(PatternSpec.of(spec.size(), spec.grid(), 4711))
                .pieces()
                .get(7);
        lying.add(stranger);
        byte[] jpeg = RenderedPhoto.jpeg(PieceScenes.lay(lying, pattern, new Random(11)));
        assertThat(lying).as("all of them lie on one sheet").isEmpty();

        PackingProofs.Taken taken = proofs.look(order, jpeg, 1);
        PieceCheck.Result result = proofs.result(order, List.of(taken));
        assertThat(result.troubles()).isEmpty();
        assertThat(result.missing()).containsExactly(List.of(GONE));
        assertThat(result.foreign()).isOne();
        assertThat(taken.jpeg().length).isLessThan(700_000);

        BookingKey key = BookingKey.fresh();
        PackingProof kept = proofs.keep(key, order.id(), 1, List.of(taken), "Robin");
        assertThat(proofs.keep(key, order.id(), 1, List.of(taken), "Robin")).isEqualTo(kept);
        assertThat(proofs.of(order.id())).containsExactly(kept);
        assertThat(kept.missing()).containsExactly(List.of(GONE));
        assertThat(kept.seen()).isEqualTo(pattern.pieces().size());
        assertThat(kept.isComplete()).isFalse();
        assertThat(proofs.photo(kept.id(), 0)).hasValue(taken.jpeg());
        assertThat(proofs.photos(kept.id()).getFirst().edges())
                .hasSize(pattern.pieces().size())
                .anyMatch(edge -> edge.number() == 0)
                .noneMatch(edge -> edge.number() == GONE);
        assertThat(history.of(order.id())).anyMatch(line -> line.toString().contains("bench.pieces.history.some"));
        assertThatThrownBy(
                        () -> jdbc.sql("update packing_proof set missing = ''").update())
                .isInstanceOf(DataAccessException.class);
        assertThatThrownBy(() -> jdbc.sql("delete from packing_proof_photo").update())
                .isInstanceOf(DataAccessException.class);
        assertThatThrownBy(() -> proofs.keep(BookingKey.fresh(), order.id(), 2, List.of(taken), "Robin"))
                .as("the order has one puzzle only")
                .isInstanceOf(Refused.class);
    }
}
