package puzzleworkshop.proofs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.web.context.WebApplicationContext;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.artwork.UnusedPictureCleanup;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.orders.Order;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;

/** Pictures nobody uses, looked at from the highest room that uses some. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class PictureCareIT {

    @Autowired
    UnusedPictureCleanup care;

    @Autowired
    Pictures pictures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    @BeforeEach
    void clean(@Autowired javax.sql.DataSource database) {
        CleanDatabase.now(database);
    }

    @Test
    void a_picture_that_nothing_has_used_for_a_month_is_thrown_away_and_written_down() throws IOException {
        Picture old = picture("tried.png", 31);
        Picture fresh = picture("tried-just-now.png", 29);
        assertThat(care.clear()).isEqualTo(1);
        assertThat(pictures.find(old.id())).isEmpty();
        assertThat(pictures.find(fresh.id())).isPresent();
        assertThat(jdbc.sql("select count(*) from picture_original")
                        .query(Integer.class)
                        .single())
                .isEqualTo(1);
        assertThat(care.clearings(5)).hasSize(1).allSatisfy(clearing -> {
            assertThat(clearing.pictures()).isEqualTo(1);
            assertThat(clearing.bytes()).isEqualTo(old.bytes());
        });
        assertThat(jdbc.sql("select file_name from picture_cleared")
                        .query(String.class)
                        .single())
                .isEqualTo("tried.png");
        assertThat(care.kept().pictures()).isEqualTo(1);
        assertThat(care.clear()).isZero();
        assertThatThrownBy(() -> jdbc.sql("delete from picture_cleared").update())
                .hasMessageContaining("only added to");
    }

    @Test
    void a_picture_that_something_points_to_stays_even_where_no_room_spoke_for_it() throws IOException {
        Picture old = picture("held.png", 400);
        jdbc.sql("create table held_picture (picture_id uuid constraint held_picture_of references picture)")
                .update();
        try {
            jdbc.sql("insert into held_picture values (:id)")
                    .param("id", old.id().value())
                    .update();
            assertThat(care.clear()).isZero();
            assertThat(pictures.find(old.id())).isPresent();
            assertThat(pictures.rendition(old.id(), 240)).isPresent();
            assertThatThrownBy(() -> jdbc.sql("delete from picture where id = :id")
                            .param("id", old.id().value())
                            .update())
                    .isInstanceOf(DataIntegrityViolationException.class);
        } finally {
            jdbc.sql("drop table held_picture").update();
        }
    }

    @Test
    void the_picture_of_an_order_stays_and_so_does_one_that_was_approved_before_it_was_replaced(
            @Autowired WebApplicationContext context, @Autowired Proofs proofs, @Autowired CustomerDesk desk)
            throws IOException {
        Order order = new BenchOrders(context)
                .waitingForApproval("Ida Lind", LocalDate.now(clock).plusDays(20), 20);
        Token token = proofs.makeLink(order.id(), "Robin");
        PictureId approved = order.picture().orElseThrow().picture();
        desk.approve(token, "203.0.113.99", desk.look(token, "203.0.113.99").fingerprint(), "Ida", true, true);
        var replaced = desk.send(
                token,
                "203.0.113.99",
                "second.png",
                new ByteArrayInputStream(SamplePictures.encode(SamplePictures.quarters(1200, 800), "png")));
        PictureId never = desk.send(
                        token,
                        "203.0.113.99",
                        "third.png",
                        new ByteArrayInputStream(SamplePictures.encode(SamplePictures.leaves(1200, 800, 3), "png")))
                .picture()
                .orElseThrow()
                .id();
        assertThat(pictures.find(replaced.picture().orElseThrow().id()))
                .as("a link does not fill the workshop with pictures that it replaced itself")
                .isEmpty();
        jdbc.sql("update picture set received_at = received_at - interval '90 days'")
                .update();
        assertThat(care.clear()).isZero();
        assertThat(pictures.find(approved)).isPresent();
        assertThat(pictures.find(never)).isPresent();
    }

    /** Taken in so many days ago. */
    private Picture picture(String name, int days) throws IOException {
        Picture picture = pictures.take(
                name, new ByteArrayInputStream(SamplePictures.encode(SamplePictures.quarters(400, 300), "png")));
        Instant then = clock.instant().minus(java.time.Duration.ofDays(days));
        jdbc.sql("update picture set received_at = :then where id = :id")
                .param("then", Timestamp.from(then))
                .param("id", picture.id().value())
                .update();
        return picture;
    }
}
