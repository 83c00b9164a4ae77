package puzzleworkshop.proofs;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.pixels.MarkedSpot;
import puzzleworkshop.measure.OrderId;

@Repository
class ProofStore {

    private final JdbcClient jdbc;

    ProofStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void add(OrderId order, Token token, Instant now, String who, Instant expires) {
        jdbc.sql("""
            insert into proof_link (order_id, token, token_sha256, made_at, made_by, expires_at)
            values (:order, :token, :hash, :now, :who, :expires)
            """)
                .param("order", order.value())
                .param("token", token.text())
                .param("hash", token.sha256())
                .param("now", Timestamp.from(now))
                .param("who", who)
                .param("expires", Timestamp.from(expires))
                .update();
    }

    boolean withdraw(OrderId order, Instant now) {
        return jdbc.sql("update proof_link set withdrawn_at = :now, token = null where order_id = :order and"
                                + " withdrawn_at is null")
                        .param("now", Timestamp.from(now))
                        .param("order", order.value())
                        .update()
                > 0;
    }

    Optional<ProofLink> byToken(String tokenHash) {
        return jdbc.sql("select * from proof_link where token_sha256 = :token")
                .param("token", tokenHash)
                .query((row, n) -> link(row))
                .optional();
    }

    Optional<ProofLink> latest(OrderId order) {
        return jdbc.sql("select * from proof_link where order_id = :order order by id desc limit 1")
                .param("order", order.value())
                .query((row, n) -> link(row))
                .optional();
    }

    Optional<Token> token(long link) {
        return jdbc.sql("select token from proof_link where id = :id and token is not null")
                .param("id", link)
                .query((row, n) -> new Token(row.getString("token")))
                .optional();
    }

    void seen(long link, Instant now) {
        jdbc.sql("update proof_link set seen_at = :now where id = :id")
                .param("now", Timestamp.from(now))
                .param("id", link)
                .update();
    }

    void addApproval(ProofLink link, Instant now, String by, ApprovedSnapshot shown, PictureId picture) {
        jdbc.sql("""
            insert into proof_approval (order_id, link_id, at, by_name, fingerprint, picture_id, shown, may_use)
            values (:order, :link, :now, :by, :fingerprint, :picture, :shown, true)
            """)
                .param("order", link.order().value())
                .param("link", link.id())
                .param("now", Timestamp.from(now))
                .param("by", by)
                .param("fingerprint", shown.fingerprint())
                .param("picture", picture.value())
                .param("shown", shown.text())
                .update();
    }

    List<ProofApproval> approvals(OrderId order) {
        return jdbc.sql("select at, by_name, fingerprint from proof_approval where order_id = :order order by id desc")
                .param("order", order.value())
                .query((row, n) -> new ProofApproval(
                        row.getTimestamp("at").toInstant(), row.getString("by_name"), row.getString("fingerprint")))
                .list();
    }

    void addWish(ProofLink link, Instant now, CustomerWish wish, Optional<PictureId> picture) {
        jdbc.sql("""
            insert into proof_wish (order_id, link_id, at, wish, picture_id, marks, years)
            values (:order, :link, :now, :wish, :picture, :marks, :years)
            """)
                .param("order", link.order().value())
                .param("link", link.id())
                .param("now", Timestamp.from(now))
                .param("wish", wish.words())
                .param("picture", picture.map(PictureId::value).orElse(null))
                .param("marks", numbers(wish.places()))
                .param("years", wish.years().orElse(null))
                .update();
    }

    List<ProofWish> wishes(OrderId order) {
        return jdbc.sql("""
            select id, at, wish, picture_id, marks, years, settled_by from proof_wish
            where order_id = :order order by id desc
            """)
                .param("order", order.value())
                .query((row, n) -> new ProofWish(
                        row.getLong("id"),
                        row.getTimestamp("at").toInstant(),
                        new CustomerWish(
                                row.getString("wish"),
                                places((Double[]) row.getArray("marks").getArray()),
                                Optional.ofNullable(row.getObject("years", Integer.class))),
                        Optional.ofNullable(row.getObject("picture_id", UUID.class))
                                .map(PictureId::new),
                        Optional.ofNullable(row.getString("settled_by"))))
                .list();
    }

    private static Double[] numbers(List<MarkedPlace> places) {
        return places.stream()
                .flatMap(place -> Stream.of(
                        place.spot().across(),
                        place.spot().down(),
                        place.spot().halfWidth(),
                        place.along() ? 1.0 : 0.0))
                .toArray(Double[]::new);
    }

    private static List<MarkedPlace> places(Double[] numbers) {
        List<MarkedPlace> places = new ArrayList<>();
        for (int i = 0; i + 3 < numbers.length; i += 4) {
            places.add(new MarkedPlace(new MarkedSpot(numbers[i], numbers[i + 1], numbers[i + 2]), numbers[i + 3] > 0));
        }
        return places;
    }

    void settle(OrderId order, long wish, String who, Instant now) {
        jdbc.sql("""
            update proof_wish set settled_at = :now, settled_by = :who
            where id = :id and order_id = :order and settled_at is null
            """)
                .param("now", Timestamp.from(now))
                .param("who", who)
                .param("id", wish)
                .param("order", order.value())
                .update();
    }

    /** Those of the pictures asked for that were approved since then. */
    List<PictureId> approvedSince(Set<PictureId> asked, Instant since) {
        return jdbc.sql("select distinct picture_id from proof_approval where picture_id = any(:asked) and at >="
                        + " :since")
                .param("asked", asked.stream().map(PictureId::value).toArray(UUID[]::new))
                .param("since", Timestamp.from(since))
                .query((row, n) -> new PictureId(row.getObject("picture_id", UUID.class)))
                .list();
    }

    /** Those of the pictures asked for that an approval holds. */
    List<PictureId> holding(Set<PictureId> asked) {
        return jdbc.sql("select distinct picture_id from proof_approval where picture_id = any(:asked)")
                .param("asked", asked.stream().map(PictureId::value).toArray(UUID[]::new))
                .query((row, n) -> new PictureId(row.getObject("picture_id", UUID.class)))
                .list();
    }

    private static ProofLink link(ResultSet row) throws SQLException {
        return new ProofLink(
                row.getLong("id"),
                new OrderId(row.getLong("order_id")),
                row.getTimestamp("made_at").toInstant(),
                row.getString("made_by"),
                row.getTimestamp("expires_at").toInstant(),
                Optional.ofNullable(row.getTimestamp("seen_at")).map(Timestamp::toInstant),
                Optional.ofNullable(row.getTimestamp("withdrawn_at")).map(Timestamp::toInstant));
    }
}
