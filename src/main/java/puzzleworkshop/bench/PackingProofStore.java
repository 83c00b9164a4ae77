package puzzleworkshop.bench;

import java.sql.Timestamp;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.bench.PackingProof.Edge;
import puzzleworkshop.bench.PackingProof.ProofPhoto;
import puzzleworkshop.measure.OrderId;

/** Proofs of what was packed. */
@Repository
class PackingProofStore {

    private static final String SELECT = """
        select p.*, (select count(*) from packing_proof_photo f where f.proof_id = p.id) as photos
        from packing_proof p
        """;

    private final JdbcClient jdbc;

    PackingProofStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    long add(PackingProof proof) {
        return jdbc.sql("""
            insert into packing_proof
                (order_id, puzzle, expected, seen, foreign_pieces, missing, troubles, kept_at, kept_by)
            values (:order, :puzzle, :expected, :seen, :foreign, :missing, :troubles, :at, :who) returning id
            """)
                .param("order", proof.order().value())
                .param("puzzle", proof.puzzle())
                .param("expected", proof.expected())
                .param("seen", proof.seen())
                .param("foreign", proof.foreign())
                .param("missing", PackingProof.text(proof.missing()))
                .param("troubles", proof.troubles())
                .param("at", Timestamp.from(proof.at()))
                .param("who", proof.who())
                .query(Long.class)
                .single();
    }

    void add(long proof, int place, byte[] jpeg, ProofPhoto photo) {
        jdbc.sql("""
            insert into packing_proof_photo (proof_id, place, width, height, content, edges)
            values (:proof, :place, :width, :height, :content, :edges)
            """)
                .param("proof", proof)
                .param("place", place)
                .param("width", photo.width())
                .param("height", photo.height())
                .param("content", jpeg)
                .param("edges", photo.edges().stream().map(Edge::text).collect(Collectors.joining("\n")))
                .update();
    }

    PackingProof get(long id) {
        return jdbc.sql(SELECT + "where p.id = :id")
                .param("id", id)
                .query((row, n) -> proof(row))
                .single();
    }

    List<PackingProof> of(OrderId order) {
        return jdbc.sql(SELECT + "where p.order_id = :order order by p.id desc")
                .param("order", order.value())
                .query((row, n) -> proof(row))
                .list();
    }

    private static PackingProof proof(java.sql.ResultSet row) throws java.sql.SQLException {
        return new PackingProof(
                row.getLong("id"),
                new OrderId(row.getLong("order_id")),
                row.getInt("puzzle"),
                row.getInt("expected"),
                row.getInt("seen"),
                row.getInt("foreign_pieces"),
                PackingProof.read(row.getString("missing")),
                row.getString("troubles"),
                row.getInt("photos"),
                row.getTimestamp("kept_at").toInstant(),
                row.getString("kept_by"));
    }

    List<ProofPhoto> photos(long proof) {
        return jdbc.sql("select width, height, edges from packing_proof_photo where proof_id = :id order by place")
                .param("id", proof)
                .query((row, n) -> new ProofPhoto(
                        row.getInt("width"),
                        row.getInt("height"),
                        row.getString("edges")
                                .lines()
                                .filter(line -> !line.isEmpty())
                                .map(Edge::read)
                                .toList()))
                .list();
    }

    Optional<byte[]> content(long proof, int place) {
        return jdbc.sql("select content from packing_proof_photo where proof_id = :id and place = :place")
                .param("id", proof)
                .param("place", place)
                .query((row, n) -> row.getBytes(1))
                .optional();
    }
}
