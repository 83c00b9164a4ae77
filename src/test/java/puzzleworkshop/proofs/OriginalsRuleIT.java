package puzzleworkshop.proofs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.artwork.CroppedPictures;
import puzzleworkshop.artwork.OriginalsRule;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.Pictures;
import puzzleworkshop.artwork.UnusedPictureCleanup;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.TestClock;
import puzzleworkshop.workshop.Workshop;

/** Originals of orders long done with, looked at from the highest room that uses pictures. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class OriginalsRuleIT {

    @Autowired
    OriginalsRule rule;

    @Autowired
    UnusedPictureCleanup unused;

    @Autowired
    Pictures pictures;

    @Autowired
    CroppedPictures cropped;

    @Autowired
    Orders orders;

    @Autowired
    Proofs proofs;

    @Autowired
    CustomerDesk desk;

    @Autowired
    Workshop workshop;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    BeanFactory beans;

    @BeforeEach
    void clean(@Autowired javax.sql.DataSource database) {
        CleanDatabase.now(database);
    }

    private void itIs(String day) {
        TestClock.set(
                LocalDateTime.parse(day + "T09:00:00").atZone(workshop.zone()).toInstant());
    }

    /** Approved by its customer's link in January 2027. */
    private Order approved(String customer) {
        itIs("2027-01-11");
        Order order = new BenchOrders(beans).waitingForApproval(customer, LocalDate.of(2027, 1, 29), 20);
        Token token = proofs.makeLink(order.id(), "Robin");
        desk.approve(token, "203.0.113.9", desk.look(token, "203.0.113.9").fingerprint(), customer, true, true);
        return orders.get(order.id());
    }

    private int originals() {
        return jdbc.sql("select count(*) from picture_original")
                .query(Integer.class)
                .single();
    }

    @Test
    void two_years_after_an_order_was_closed_its_original_goes_and_what_was_approved_is_still_shown()
            throws IOException {
        Order done = approved("Ida Lund");
        Order open = approved("Tom Reed");
        FramedPicture framed = done.picture().orElseThrow();
        PictureId picture = framed.picture();
        Size finished = done.puzzle().finished();
        byte[] before = cropped.proof(picture, framed.crop(), finished, Length.ZERO, 800);
        itIs("2027-02-01");
        orders.cancel(done.id(), "moved away", "Robin");
        assertThat(rule.months()).isEqualTo(OptionalInt.of(24));
        itIs("2029-02-01");
        assertThat(rule.clear()).as("on the very day it is 24 months").isZero();
        itIs("2029-02-02");
        assertThat(rule.wouldFree(24).pictures()).isEqualTo(1);
        assertThat(rule.wouldFree(24).bytes()).isEqualTo(pictures.get(picture).bytes());
        assertThat(rule.wouldFree(25).pictures()).isZero();
        assertThat(originals()).isEqualTo(2);
        assertThat(rule.clear()).isEqualTo(1);
        assertThat(originals()).isEqualTo(1);
        assertThat(pictures.hasOriginal(open.picture().orElseThrow().picture()))
                .as("two years old, but still open")
                .isTrue();
        assertThat(cropped.proof(picture, framed.crop(), finished, Length.ZERO, 800))
                .as("the proof")
                .isEqualTo(before);
        assertThat(cropped.proof(picture, framed.crop(), finished, Length.ZERO, 4000))
                .as("a larger one is drawn from the largest copy")
                .isNotEmpty();
        assertThatThrownBy(() -> cropped.print(picture, framed.crop(), finished, Length.mm(3), 300))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("artwork.originals.gone");
        assertThat(proofs.approvals(done.id())).hasSize(1);
        assertThat(rule.clearings(5))
                .singleElement()
                .satisfies(cleared -> assertThat(cleared.pictures()).isEqualTo(1));
        assertThat(rule.clear()).as("a second time").isZero();
        assertThat(unused.clear()).as("the picture itself is in use").isZero();
    }

    @Test
    void an_owner_may_keep_originals_longer_or_for_good() {
        Order done = approved("Ida Lund");
        itIs("2027-02-01");
        orders.cancel(done.id(), "moved away", "Robin");
        itIs("2029-03-01");
        rule.save(OptionalInt.empty());
        assertThat(rule.clear()).isZero();
        rule.save(OptionalInt.of(36));
        assertThat(rule.clear()).isZero();
        assertThatThrownBy(() -> rule.save(OptionalInt.of(0))).isInstanceOf(Refused.class);
        rule.save(OptionalInt.of(12));
        assertThat(rule.clear()).isEqualTo(1);
        assertThatThrownBy(
                        () -> jdbc.sql("delete from picture_original_cleared").update())
                .hasMessageContaining("only added to");
    }

    @Test
    void an_order_that_is_not_done_keeps_its_original_however_old_it_is() {
        approved("Ida Lund");
        itIs("2037-01-01");
        assertThat(rule.clear()).isZero();
        assertThat(originals()).isEqualTo(1);
    }
}
