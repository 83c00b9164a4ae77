package puzzleworkshop.proofs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;
import static org.springframework.security.test.web.servlet.setup.SecurityMockMvcConfigurers.springSecurity;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;

import java.io.ByteArrayInputStream;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.setup.MockMvcBuilders;
import org.springframework.web.context.WebApplicationContext;
import puzzleworkshop.artwork.Rendition;
import puzzleworkshop.artwork.SamplePictures;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.MarkedSpot;
import puzzleworkshop.bench.BenchOrders;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.proofs.CustomerDesk.Sight;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class ProofsIT {

    private static int addresses;

    @Autowired
    WebApplicationContext context;

    @Autowired
    Proofs proofs;

    @Autowired
    CustomerDesk desk;

    @Autowired
    Orders orders;

    @Autowired
    JdbcClient jdbc;

    Order order;

    @Autowired
    puzzleworkshop.artwork.Pictures pictures;

    @Autowired
    Formatter figures;

    Token token;
    String from;

    @BeforeEach
    void an_order_with_a_link() {
        order = new BenchOrders(context)
                .waitingForApproval("Ida Lind", LocalDate.now().plusDays(20), 20);
        token = proofs.makeLink(order.id(), "Robin");
        from = "203.0.113." + ++addresses; // RFC 5737: addresses for examples
    }

    @Test
    void tokens_have_256_random_bits_and_links_are_found_by_their_hash() {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < 1000; i++) {
            Token fresh = Token.fresh();
            assertThat(fresh.isWellFormed()).isTrue();
            assertThat(seen.add(fresh.text())).isTrue();
        }
        assertThat(jdbc.sql("select token_sha256 from proof_link")
                        .query(String.class)
                        .list())
                .contains(token.sha256())
                .doesNotContain(token.text());
        assertThat(token.toString()).doesNotContain(token.text());
        // SHA-256 of "abc": FIPS 180-2, appendix B.1 (from memory).
        assertThat(Token.sha256("abc")).isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    @Test
    void a_customer_sees_the_order_approves_it_and_a_change_asks_again() {
        Sight sight = desk.look(token, from);
        assertThat(sight.order().id()).isEqualTo(order.id());
        // 1600 pixels on 200 mm are 203 per inch: good, no word on softness needed.
        assertThat(sight.needsWordOnSoftness()).isFalse();
        assertThat(refusal(() -> desk.approve(token, from, sight.fingerprint(), "Ida", false, false)))
                .isEqualTo("proofs.may-use.missing");
        assertThat(refusal(() -> desk.approve(token, from, sight.fingerprint(), "  ", true, false)))
                .isEqualTo("proofs.name.missing");
        assertThat(refusal(() -> desk.approve(token, from, "0".repeat(64), "Ida", true, false)))
                .isEqualTo("proofs.changed-meanwhile");

        Sight approved = desk.approve(token, from, sight.fingerprint(), "Ida", true, false);
        assertThat(approved.order().approval())
                .hasValueSatisfying(a -> assertThat(a.by()).isEqualTo("Ida"));
        assertThat(proofs.approvals(order.id()))
                .singleElement()
                .satisfies(a -> assertThat(a.fingerprint()).isEqualTo(sight.fingerprint()));

        Crop other = new Crop(0.05, 0.05, 0.9, 0.9, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        Sight changed = desk.frame(token, from, other);
        assertThat(changed.order().approval()).isEmpty();
        assertThat(changed.fingerprint()).isNotEqualTo(sight.fingerprint());
        assertThat(refusal(() -> desk.approve(token, from, sight.fingerprint(), "Ida", true, false)))
                .isEqualTo("proofs.changed-meanwhile");
    }

    @Test
    void the_workshop_changing_the_framing_voids_what_the_customer_sees() {
        Sight sight = desk.look(token, from);
        Crop other = new Crop(0, 0, 0.8, 0.8, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        orders.reframe(
                order.id(), new FramedPicture(order.picture().orElseThrow().picture(), other), "Robin");
        assertThat(refusal(() -> desk.approve(token, from, sight.fingerprint(), "Ida", true, false)))
                .isEqualTo("proofs.changed-meanwhile");
    }

    @Test
    void a_coarse_picture_needs_the_customers_word() throws Exception {
        byte[] coarse = SamplePictures.encode(SamplePictures.quarters(400, 300), "png");
        Sight sight = desk.send(token, from, "small.png", new ByteArrayInputStream(coarse));
        assertThat(sight.needsWordOnSoftness()).isTrue();
        assertThat(refusal(() -> desk.approve(token, from, sight.fingerprint(), "Ida", true, false)))
                .isEqualTo("proofs.soft.missing");
        assertThat(desk.approve(token, from, sight.fingerprint(), "Ida", true, true)
                        .order()
                        .softAccepted())
                .contains("Ida");
    }

    @Test
    void what_is_no_picture_changes_nothing() {
        assertThat(refusal(() -> desk.send(token, from, "a.jpg", new ByteArrayInputStream("hello".getBytes()))))
                .isEqualTo("artwork.refused.text");
        assertThat(orders.get(order.id()).picture()).isEqualTo(order.picture());
    }

    @Test
    void after_ten_pictures_in_an_hour_a_link_has_to_wait_and_others_need_not() throws Exception {
        byte[] small = SamplePictures.encode(SamplePictures.quarters(40, 30), "png");
        for (int i = 0; i < 10; i++) {
            desk.send(token, from, "small.png", new ByteArrayInputStream(small));
        }
        assertThat(refusal(() -> desk.send(token, from, "small.png", new ByteArrayInputStream(small))))
                .isEqualTo("proofs.too-many-pictures");
        Order other = new BenchOrders(context)
                .waitingForApproval("Max Berg", LocalDate.now().plusDays(20), 20);
        desk.send(proofs.makeLink(other.id(), "Robin"), from, "small.png", new ByteArrayInputStream(small));
    }

    @Test
    void what_is_being_made_cannot_be_changed_any_more() {
        desk.approve(token, from, desk.look(token, from).fingerprint(), "Ida", true, false);
        orders.completeStage(order.id(), Stage.PRINT, "Robin");
        Crop other = new Crop(0, 0, 0.8, 0.8, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        assertThat(refusal(() -> desk.frame(token, from, other))).isEqualTo("proofs.too-late");
        assertThat(desk.look(token, from).order().next()).contains(Stage.LAMINATE);
    }

    @Test
    void withdrawn_replaced_and_expired_links_show_nothing() {
        proofs.withdrawLink(order.id(), "Robin");
        assertThat(refusal(() -> desk.look(token, from))).isEqualTo("proofs.closed");
        Token second = proofs.makeLink(order.id(), "Robin");
        Token third = proofs.makeLink(order.id(), "Robin");
        assertThat(refusal(() -> desk.look(second, from))).isEqualTo("proofs.closed");
        assertThat(desk.look(third, from).order().id()).isEqualTo(order.id());
        jdbc.sql("update proof_link set made_at = now() - interval '61 days', expires_at = now() - interval '1"
                        + " day' where token_sha256 = :t")
                .param("t", third.sha256())
                .update();
        assertThat(refusal(() -> desk.look(third, from))).isEqualTo("proofs.closed");
    }

    @Test
    void a_link_is_shown_again_as_long_as_it_works() {
        assertThat(proofs.shownAgain(proofs.linkOf(order.id()))).contains(token);
        Token second = proofs.makeLink(order.id(), "Robin");
        assertThat(proofs.shownAgain(proofs.linkOf(order.id()))).contains(second);
        proofs.withdrawLink(order.id(), "Robin");
        assertThat(proofs.shownAgain(proofs.linkOf(order.id()))).isEmpty();
        assertThat(jdbc.sql("select count(token) from proof_link where order_id = :order")
                        .param("order", order.id().value())
                        .query(Integer.class)
                        .single())
                .as("tokens kept of links that no longer work")
                .isZero();
    }

    @Test
    void a_link_opens_or_does_not_without_being_counted_as_seen_by_the_customer() {
        assertThat(desk.opens(token, from)).isTrue();
        assertThat(proofs.linkOf(order.id()).orElseThrow().seenAt()).isEmpty();
        assertThat(desk.opens(new Token(""), from)).isFalse();
        assertThat(desk.opens(Token.fresh(), from)).isFalse();
    }

    @Test
    void guessing_is_stopped_after_twenty_wrong_tokens_from_one_address() {
        for (int i = 0; i < 20; i++) {
            assertThat(refusal(() -> desk.look(Token.fresh(), from))).isEqualTo("proofs.closed");
        }
        assertThat(refusal(() -> desk.look(Token.fresh(), from))).isEqualTo("proofs.wait");
        assertThat(refusal(() -> desk.look(token, from))).isEqualTo("proofs.wait");
        assertThat(desk.look(token, "198.51.100.7").order().id()).isEqualTo(order.id());
    }

    /** PostgreSQL keeps no NUL: it was a fault. */
    @Test
    void a_wish_with_a_sign_that_nobody_types_is_kept_without_it() {
        desk.wish(token, from, CustomerWish.of("More\u0000 of the\u0007 lake\nplease"));
        assertThat(jdbc.sql("select wish from proof_wish").query(String.class).list())
                .contains("More of the lake\nplease");
        assertThat(refusal(() -> desk.wish(token, from, CustomerWish.of("\u0000"))))
                .isEqualTo("proofs.wish.missing");
    }

    @Test
    void a_picture_that_is_replaced_and_used_nowhere_is_not_kept_for_a_month() throws Exception {
        byte[] first = SamplePictures.encode(SamplePictures.quarters(400, 300), "png");
        byte[] second = SamplePictures.encode(SamplePictures.quarters(500, 300), "png");
        Sight one = desk.send(token, from, "one.png", new ByteArrayInputStream(first));
        desk.send(token, from, "two.png", new ByteArrayInputStream(second));
        assertThat(pictures.find(one.picture().orElseThrow().id())).isEmpty();
    }

    @Test
    void a_wish_reaches_the_workshop_and_is_seen_to() {
        assertThat(refusal(() -> desk.wish(token, from, CustomerWish.of(" ")))).isEqualTo("proofs.wish.missing");
        assertThat(refusal(() -> desk.wish(token, from, CustomerWish.of("x".repeat(2001)))))
                .isEqualTo("proofs.wish.missing");
        desk.wish(token, from, CustomerWish.of("More of the <b>lake</b>, please"));
        ProofWish wish = proofs.wishes(order.id()).getFirst();
        assertThat(wish.settledBy()).isEmpty();
        proofs.settle(order, wish, "Robin");
        assertThat(proofs.wishes(order.id()).getFirst().settledBy()).contains("Robin");
        assertThat(orders.history(order.id()))
                .anySatisfy(line -> assertThat(line.what().key()).isEqualTo("proofs.history.wish"));
    }

    @Test
    void places_marked_on_the_picture_and_an_age_reach_the_workshop_without_a_word() {
        MarkedPlace face = new MarkedPlace(new MarkedSpot(0.31, 0.42, 0.055), false);
        MarkedPlace lake = new MarkedPlace(new MarkedSpot(0.7, 0.65, 0.08), true);
        desk.wish(token, from, new CustomerWish("", List.of(face, lake), Optional.of(8)));
        ProofWish wish = proofs.wishes(order.id()).getFirst();
        assertThat(wish.wish()).isEqualTo(new CustomerWish("", List.of(face, lake), Optional.of(8)));
        assertThat(wish.picture()).isEqualTo(order.picture().map(FramedPicture::picture));
        // as it is read back and said on the order's page
        assertThat(orders.history(order.id()).stream().map(line -> figures.say(line.what())))
                .contains(
                        "Customer marked places on the picture: 2",
                        "Customer wishes a puzzle that is not too hard for a child of 8 years");

        // the mark stays on the face when the customer frames the picture otherwise
        Sight before = desk.look(token, from);
        Crop closer = new Crop(0.05, 0.05, 0.9, 0.9, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        desk.frame(token, from, closer);
        double width = order.puzzle().finished().width().mm();
        assertThat(face.on(order.puzzle().finished(), closer, before.picture().orElseThrow())
                        .middle()
                        .xMm())
                .isCloseTo(width * (0.31 - 0.05) / 0.9, within(1e-9));
    }

    @Test
    void pictures_are_reached_by_the_token_only() throws Exception {
        MockMvc web = MockMvcBuilders.webAppContextSetup(context)
                .apply(springSecurity())
                .build();
        MockHttpServletResponse face = answer(web, "/p/" + token.text() + "/face/none/640.jpg");
        assertThat(face.getStatus()).isEqualTo(200);
        assertThat(face.getContentType()).isEqualTo("image/jpeg");
        assertThat(answer(web, "/p/" + token.text() + "/picture/none/1600.jpg").getStatus())
                .isEqualTo(200);

        String picture = "/" + Rendition.address(order.picture().orElseThrow().picture(), 640);
        assertThat(answer(web, picture).getStatus()).isNotEqualTo(200);
        assertThat(answer(web, "/faces/" + order.id().value() + "/" + order.version() + "/640.jpg")
                        .getStatus())
                .isNotEqualTo(200);
        assertThat(answer(web, "/p/" + Token.fresh().text() + "/face/none/640.jpg")
                        .getStatus())
                .isEqualTo(404);
        assertThat(answer(web, "/p/" + order.id().value() + "/face/none/640.jpg")
                        .getStatus())
                .isEqualTo(404);
        assertThat(answer(web, "/p/" + token.text() + "/face/none/641.jpg").getStatus())
                .isEqualTo(404);
        proofs.withdrawLink(order.id(), "Robin");
        assertThat(answer(web, "/p/" + token.text() + "/face/none/640.jpg").getStatus())
                .isEqualTo(404);
    }

    private static MockHttpServletResponse answer(MockMvc web, String address) throws Exception {
        return web.perform(get(address)).andReturn().getResponse();
    }

    private static String refusal(ThrowingCallable call) {
        Refused refused = catchThrowableOfType(Refused.class, call);
        assertThat(refused).isNotNull();
        return refused.sentence().key();
    }
}
