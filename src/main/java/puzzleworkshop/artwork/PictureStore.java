package puzzleworkshop.artwork;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.support.SqlBinaryValue;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.reading.ColourFacts;
import puzzleworkshop.artwork.reading.PictureFormat;
import puzzleworkshop.measure.Sentence;

@Repository
class PictureStore {

    private final JdbcClient jdbc;

    PictureStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Transactional
    public void add(Intake.Taken taken, Path original) throws IOException {
        addPicture(taken.picture());
        try (InputStream content = Files.newInputStream(original)) {
            jdbc.sql("insert into picture_original (picture_id, content) values (:id, :content)")
                    .param("id", taken.picture().id().value())
                    .param(
                            "content",
                            new SqlBinaryValue(content, taken.picture().bytes()))
                    .update();
        }
        taken.renditions().forEach(this::addRendition);
    }

    private void addPicture(Picture picture) {
        jdbc.sql("""
                insert into picture (id, file_name, format, width_px, height_px, orientation, sha256, byte_count,
                    colour_model, colour_bits, has_alpha, profile, detail_share, dark_share, median_light, contrast,
                    received_at)
                values (:id, :fileName, :format, :width, :height, :orientation, :sha256, :bytes,
                    :model, :bits, :alpha, :profile, :detail, :dark, :median, :contrast, :receivedAt)
                """)
                .param("id", picture.id().value())
                .param("fileName", picture.fileName())
                .param("format", picture.format().name())
                .param("width", picture.width())
                .param("height", picture.height())
                .param("orientation", picture.orientation())
                .param("sha256", picture.sha256())
                .param("bytes", picture.bytes())
                .param("model", picture.colours().model().name())
                .param("bits", picture.colours().bits())
                .param("alpha", picture.colours().alpha())
                .param("profile", picture.colours().profile().orElse(null))
                .param("detail", picture.look().map(PictureLook::detail).orElse(null))
                .param("dark", picture.look().map(PictureLook::darkShare).orElse(null))
                .param("median", picture.look().map(PictureLook::medianLight).orElse(null))
                .param("contrast", picture.look().map(PictureLook::contrast).orElse(null))
                .param("receivedAt", Timestamp.from(picture.receivedAt()))
                .update();
        int position = 0;
        for (Sentence notice : picture.notices()) {
            jdbc.sql(
                            "insert into picture_notice (picture_id, position, text_key, arguments) values (:id, :position, :key, :arguments)")
                    .param("id", picture.id().value())
                    .param("position", position++)
                    .param("key", notice.key())
                    .param(
                            "arguments",
                            notice.arguments().stream().map(String::valueOf).toArray(String[]::new))
                    .update();
        }
    }

    private void addRendition(Rendition rendition) {
        jdbc.sql("""
                insert into picture_rendition (picture_id, px, width_px, height_px, jpeg)
                values (:id, :px, :width, :height, :jpeg)
                """)
                .param("id", rendition.picture().value())
                .param("px", rendition.px())
                .param("width", rendition.width())
                .param("height", rendition.height())
                .param("jpeg", rendition.jpeg())
                .update();
    }

    Optional<Picture> find(PictureId id) {
        List<Sentence> notices = jdbc.sql(
                        "select text_key, arguments from picture_notice where picture_id = :id order by position")
                .param("id", id.value())
                .query((row, n) -> new Sentence(row.getString("text_key"), Arrays.asList((Object[])
                        row.getArray("arguments").getArray())))
                .list();
        return jdbc.sql("select * from picture where id = :id")
                .param("id", id.value())
                .query((row, n) -> picture(row, notices))
                .optional();
    }

    private static Picture picture(ResultSet row, List<Sentence> notices) throws SQLException {
        Optional<PictureLook> look = Optional.empty();
        double detail = row.getDouble("detail_share");
        if (!row.wasNull()) {
            look = Optional.of(new PictureLook(
                    detail, row.getDouble("dark_share"), row.getDouble("median_light"), row.getDouble("contrast")));
        }
        return new Picture(
                new PictureId(row.getObject("id", UUID.class)),
                row.getString("file_name"),
                PictureFormat.valueOf(row.getString("format")),
                row.getInt("width_px"),
                row.getInt("height_px"),
                row.getInt("orientation"),
                row.getString("sha256"),
                row.getLong("byte_count"),
                new ColourFacts(
                        ColourFacts.Model.valueOf(row.getString("colour_model")),
                        row.getInt("colour_bits"),
                        row.getBoolean("has_alpha"),
                        Optional.ofNullable(row.getString("profile"))),
                look,
                notices,
                row.getTimestamp("received_at").toInstant());
    }

    InputStream original(PictureId id) {
        return new SlicedContent((from, length) -> jdbc.sql(
                        "select substring(content from :from for :length) from picture_original where picture_id = :id")
                .param("from", from + 1)
                .param("length", length)
                .param("id", id.value())
                .query((row, n) -> row.getBytes(1))
                .optional()
                .orElseGet(() -> new byte[0]));
    }

    Optional<Rendition> rendition(PictureId id, int px) {
        return jdbc.sql("select width_px, height_px, jpeg from picture_rendition where picture_id = :id and px = :px")
                .param("id", id.value())
                .param("px", px)
                .query((row, n) ->
                        new Rendition(id, px, row.getInt("width_px"), row.getInt("height_px"), row.getBytes("jpeg")))
                .optional();
    }

    List<PictureId> receivedBefore(Instant time) {
        return jdbc.sql("select id from picture where received_at < :time order by received_at")
                .param("time", Timestamp.from(time))
                .query((row, n) -> new PictureId(row.getObject("id", UUID.class)))
                .list();
    }

    /** Takes a picture out and writes down that it did; the database refuses where something points to it. */
    @Transactional
    public void clear(PictureId id, Instant now) {
        jdbc.sql("""
                insert into picture_cleared (picture_id, file_name, sha256, byte_count, received_at, cleared_at)
                select id, file_name, sha256, byte_count, received_at, :now from picture where id = :id
                """).param("now", Timestamp.from(now)).param("id", id.value()).update();
        for (String table : List.of("picture_notice", "picture_rendition", "picture_original")) {
            jdbc.sql("delete from " + table + " where picture_id = :id")
                    .param("id", id.value())
                    .update();
        }
        jdbc.sql("delete from picture where id = :id").param("id", id.value()).update();
    }

    /** Pictures that came in before and have their original, the oldest first. */
    List<PictureId> withOriginalBefore(Instant time) {
        return jdbc.sql("""
                select p.id from picture p join picture_original o on o.picture_id = p.id
                where p.received_at < :time order by p.received_at
                """)
                .param("time", Timestamp.from(time))
                .query((row, n) -> new PictureId(row.getObject("id", UUID.class)))
                .list();
    }

    long bytesOf(Collection<PictureId> pictures) {
        return jdbc.sql("select coalesce(sum(byte_count), 0) from picture where id = any(:ids)")
                .param("ids", pictures.stream().map(PictureId::value).toArray(UUID[]::new))
                .query(Long.class)
                .single();
    }

    /** Takes the original out and writes down that it did; the picture and its smaller copies stay. */
    @Transactional
    public void clearOriginal(PictureId id, Instant now) {
        jdbc.sql("""
                insert into picture_original_cleared (picture_id, byte_count, cleared_at)
                select id, byte_count, :now from picture where id = :id
                """).param("now", Timestamp.from(now)).param("id", id.value()).update();
        jdbc.sql("delete from picture_original where picture_id = :id")
                .param("id", id.value())
                .update();
    }

    Optional<Instant> originalCleared(PictureId id) {
        return jdbc.sql("select cleared_at from picture_original_cleared where picture_id = :id")
                .param("id", id.value())
                .query((row, n) -> row.getTimestamp("cleared_at").toInstant())
                .optional();
    }

    OptionalInt originalMonths() {
        return jdbc
                .sql("select original_months from picture_rule")
                .query((row, n) -> row.getObject("original_months", Integer.class))
                .stream()
                .filter(Objects::nonNull)
                .mapToInt(Integer::intValue)
                .findFirst();
    }

    void saveOriginalMonths(OptionalInt months) {
        jdbc.sql("update picture_rule set original_months = :months")
                .param("months", months.isPresent() ? months.getAsInt() : null, Types.INTEGER)
                .update();
    }

    /** The last clearings by the rule, newest first. */
    List<UnusedPictureCleanup.Clearing> originalClearings(int most) {
        return jdbc.sql("""
                select cleared_at, count(*) as pictures, sum(byte_count) as bytes from picture_original_cleared
                group by cleared_at order by cleared_at desc limit :most
                """)
                .param("most", most)
                .query((row, n) -> new UnusedPictureCleanup.Clearing(
                        row.getTimestamp("cleared_at").toInstant(), row.getInt("pictures"), row.getLong("bytes")))
                .list();
    }

    List<UnusedPictureCleanup.Clearing> clearings(int most) {
        return jdbc.sql("""
                select cleared_at, count(*) as pictures, sum(byte_count) as bytes from picture_cleared
                group by cleared_at order by cleared_at desc limit :most
                """)
                .param("most", most)
                .query((row, n) -> new UnusedPictureCleanup.Clearing(
                        row.getTimestamp("cleared_at").toInstant(), row.getInt("pictures"), row.getLong("bytes")))
                .list();
    }

    UnusedPictureCleanup.Kept kept() {
        return jdbc.sql("""
                select count(*) as pictures, coalesce(sum(p.byte_count) filter (where o.picture_id is not null), 0) as bytes
                from picture p left join picture_original o on o.picture_id = p.id
                """)
                .query((row, n) -> new UnusedPictureCleanup.Kept(row.getInt("pictures"), row.getLong("bytes")))
                .single();
    }
}
