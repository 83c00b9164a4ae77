package puzzleworkshop.orders;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.RowMapper;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.workshop.Stage;

@Repository
public class OrderStore {

    private static final String SELECT = "select " + OrderRow.COLUMNS + """
         from customer_order o join customer c on c.id = o.customer_id
        """;
    private static final RowMapper<Order> ORDER = (row, n) -> OrderRow.order(row);

    private final JdbcClient jdbc;

    OrderStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Those of the pictures asked for that an order holds. */
    List<PictureId> holding(Set<PictureId> asked) {
        return jdbc.sql("select distinct picture_id from customer_order where picture_id = any(:asked)")
                .param("asked", asked.stream().map(PictureId::value).toArray(UUID[]::new))
                .query((row, n) -> new PictureId(row.getObject("picture_id", UUID.class)))
                .list();
    }

    /** Of orders not done with, or done with since then: closed, given up, or run out as a quote. */
    List<PictureId> holdingOriginal(Set<PictureId> asked, Instant since) {
        return jdbc.sql("""
            select distinct picture_id from customer_order
            where picture_id = any(:asked)
              and case when state = 'QUOTE' then valid_until >= cast(:since as date)
                       when state in ('CLOSED', 'CANCELLED') then coalesce(closed_at >= :since, true)
                       else true end
            """)
                .param("asked", asked.stream().map(PictureId::value).toArray(UUID[]::new))
                .param("since", Timestamp.from(since))
                .query((row, n) -> new PictureId(row.getObject("picture_id", UUID.class)))
                .list();
    }

    /** Takes the next number of a year; two at a time wait for each other on the counter's row. */
    String nextNumber(int year) {
        int next = jdbc.sql("""
            insert into order_number_counter (year, last) values (:year, 1)
            on conflict (year) do update set last = order_number_counter.last + 1
            returning last
            """).param("year", year).query(Integer.class).single();
        return "%d-%04d".formatted(year, next);
    }

    OrderId insert(String number, long customer, OrderDraft draft, Instant now, String who) {
        long id = OrderRow.bind(jdbc.sql("""
            insert into customer_order (number, customer_id, state, quantity, width_mm, height_mm, piece_columns,
                piece_rows, pattern_seed, pattern_design, cut_style, outline_kind, outline_measure_mm, kerf_mm, intended_age, tray, pieces, shape_names, shape_outlines, uneven_pieces, kept_whole, board_material, board_grade,
                board_thickness_mm, picture_id, crop_left, crop_top, crop_width, crop_height, crop_turns, crop_fit,
                crop_border, crop_edge, soft_accepted, wanted_by, promised_on, rush, laser_minutes, price_net,
                price_vat, price_gross, cost, currency, valid_until, kept_price,
                delivery_way, note, created_at, created_by)
            values (:number, :customer, 'QUOTE', :quantity, :width, :height, :columns, :rows, :seed, :design, :style, :outline,
                :outlineMeasure, :kerf, :age, :tray, :pieces, :shapeNames, :shapeOutlines, :uneven, :keptWhole, :material, :grade, :thickness, :picture, :cropLeft, :cropTop, :cropWidth, :cropHeight,
                :cropTurns, :cropFit, :cropBorder, :cropEdge, :softAccepted, :wantedBy, :promised, :rush, :laser,
                :net, :vat, :gross, :cost, :currency, :validUntil, cast(:keptPrice as jsonb),
                :way, :note, :now, :who)
            returning id
            """), draft)
                .param("number", number)
                .param("customer", customer)
                .param("now", Timestamp.from(now))
                .param("who", who)
                .query(Long.class)
                .single();
        return new OrderId(id);
    }

    /** True when the order was still at the given version. */
    boolean update(OrderId id, long version, long customer, OrderDraft draft) {
        return OrderRow.bind(jdbc.sql("""
            update customer_order set customer_id = :customer, quantity = :quantity, width_mm = :width,
                height_mm = :height, piece_columns = :columns, piece_rows = :rows, pattern_seed = :seed, pattern_design = :design,
                cut_style = :style, outline_kind = :outline,
                outline_measure_mm = :outlineMeasure, kerf_mm = :kerf, intended_age = :age, tray = :tray,
                pieces = :pieces, shape_names = :shapeNames, shape_outlines = :shapeOutlines,
                uneven_pieces = :uneven, kept_whole = :keptWhole,
                board_material = :material, board_grade = :grade, board_thickness_mm = :thickness,
                picture_id = :picture, crop_left = :cropLeft, crop_top = :cropTop, crop_width = :cropWidth,
                crop_height = :cropHeight, crop_turns = :cropTurns, crop_fit = :cropFit, crop_border = :cropBorder,
                crop_edge = :cropEdge, soft_accepted = :softAccepted, wanted_by = :wantedBy,
                promised_on = :promised, rush = :rush, laser_minutes = :laser, price_net = :net, price_vat = :vat,
                price_gross = :gross, cost = :cost, currency = :currency, valid_until = :validUntil,
                kept_price = cast(:keptPrice as jsonb), delivery_way = :way, note = :note,
                version = version + 1
            where id = :id and version = :version
            """), draft)
                        .param("customer", customer)
                        .param("id", id.value())
                        .param("version", version)
                        .update()
                == 1;
    }

    String keptPrice(OrderId id) {
        return jdbc.sql("select kept_price::text from customer_order where id = :id")
                .param("id", id.value())
                .query(String.class)
                .single();
    }

    public Optional<Order> find(OrderId id) {
        return jdbc.sql(SELECT + "where o.id = :id")
                .param("id", id.value())
                .query(ORDER)
                .optional();
    }

    List<Order> all(Collection<OrderId> ids) {
        return jdbc.sql(SELECT + "where o.id = any (:ids) order by o.id")
                .param("ids", ids.stream().map(OrderId::value).toArray(Long[]::new))
                .query(ORDER)
                .list();
    }

    /**
     * One order, its row locked until the transaction ends, so that nobody else changes it meanwhile. NO KEY UPDATE, as an
     * UPDATE takes it: who only refers to the order by a foreign key need not wait.
     */
    Optional<Order> lock(OrderId id) {
        return jdbc.sql(SELECT + "where o.id = :id for no key update of o")
                .param("id", id.value())
                .query(ORDER)
                .optional();
    }

    /** The same for who needs nothing of it. @return false: there is none */
    boolean lockRow(OrderId id) {
        return jdbc.sql("select 1 from customer_order where id = :id for no key update")
                .param("id", id.value())
                .query(Integer.class)
                .optional()
                .isPresent();
    }

    Optional<Order> findByNumber(String number) {
        return jdbc.sql(SELECT + "where o.number = :number")
                .param("number", number)
                .query(ORDER)
                .optional();
    }

    Set<OrderId> confirmed(Collection<OrderId> ids) {
        return jdbc.sql("select id from customer_order where id = any (:ids) and state = 'CONFIRMED'")
                .param("ids", ids.stream().map(OrderId::value).toArray(Long[]::new))
                .query((row, n) -> new OrderId(row.getLong("id")))
                .set();
    }

    public List<Order> open() {
        return jdbc.sql(SELECT + "where o.state = 'CONFIRMED' order by o.promised_on nulls last, o.id")
                .query(ORDER)
                .list();
    }

    List<Order> list(OrderFilter filter, LocalDate today, int offset, int limit) {
        String sequence = " order by " + filter.sequence().sql() + " offset :offset limit :limit";
        return where(SELECT, filter, today, sequence)
                .param("offset", offset)
                .param("limit", limit)
                .query(ORDER)
                .list();
    }

    int count(OrderFilter filter, LocalDate today) {
        return where(
                        "select count(*) from customer_order o join customer c on c.id = o.customer_id ",
                        filter,
                        today,
                        "")
                .query(Integer.class)
                .single();
    }

    private JdbcClient.StatementSpec where(String select, OrderFilter filter, LocalDate today, String tail) {
        return jdbc.sql(select + """
            where (:text = '' or o.number ilike :part or c.name ilike :part or c.contact ilike :part
                   or c.address ilike :part or o.note ilike :part)
              and (cardinality(:states) = 0 or o.state = any (:states))
              and (cast(:customer as bigint) is null or o.customer_id = :customer)
              and (cast(:from as date) is null or o.promised_on >= :from)
              and (cast(:to as date) is null or o.promised_on <= :to)
              and (not :dayless or o.promised_on is null)
            """ + tail)
                .param("text", filter.text().strip())
                .param(
                        "part",
                        "%"
                                + filter.text()
                                        .strip()
                                        .replace("\\", "\\\\")
                                        .replace("%", "\\%")
                                        .replace("_", "\\_") + "%")
                .param("states", filter.states().stream().map(Enum::name).toArray(String[]::new))
                .param("customer", filter.customer().orElse(null))
                .param("from", filter.due().from(today).orElse(null))
                .param("to", filter.due().to(today).orElse(null))
                .param("dayless", filter.due() == OrderFilter.Due.NO_DAY);
    }

    Order confirm(OrderId id, Stage first, LocalDate promised, Instant now) {
        return changed(id, "state = 'CONFIRMED', next_stage = :first, confirmed_at = :now, promised_on = :promised")
                .param("first", first.name())
                .param("now", Timestamp.from(now))
                .param("promised", promised)
                .query(ORDER)
                .single();
    }

    /** Puts the order at a stage; absent: all stages are done and the customer has it. */
    Order moveTo(OrderId id, Optional<Stage> next, Instant now) {
        return changed(id, """
            next_stage = :next,
            state = case when cast(:next as text) is null then 'HANDED_OVER' else 'CONFIRMED' end,
            handed_over_at = case when cast(:next as text) is null then cast(:now as timestamptz) end
            """)
                .param("next", next.map(Enum::name).orElse(null))
                .param("now", Timestamp.from(now))
                .query(ORDER)
                .single();
    }

    Order end(OrderId id, OrderState state, Instant now) {
        return changed(id, """
            state = :state, next_stage = null,
            closed_at = case when :state = 'HANDED_OVER' then null else cast(:now as timestamptz) end
            """)
                .param("state", state.name())
                .param("now", Timestamp.from(now))
                .query(ORDER)
                .single();
    }

    void reframe(OrderId id, FramedPicture framed) {
        jdbc.sql("""
            update customer_order set picture_id = :picture, crop_left = :left, crop_top = :top, crop_width = :width,
                crop_height = :height, crop_turns = :turns, crop_fit = :fit, crop_border = :border, crop_edge = :edge,
                soft_accepted = '', version = version + 1
            where id = :id
            """)
                .param("picture", framed.picture().value())
                .param("left", framed.crop().left())
                .param("top", framed.crop().top())
                .param("width", framed.crop().width())
                .param("height", framed.crop().height())
                .param("turns", framed.crop().quarterTurns())
                .param("fit", framed.crop().fit().name())
                .param("border", framed.crop().borderColour())
                .param("edge", framed.crop().edge().name())
                .param("id", id.value())
                .update();
    }

    Order acceptSoft(OrderId id, String word) {
        return changed(id, "soft_accepted = :word")
                .param("word", word)
                .query(ORDER)
                .single();
    }

    Order approve(OrderId id, Optional<Approval> approval) {
        return changed(id, "approved_at = :at, approved_by = :by")
                .param("at", approval.map(a -> Timestamp.from(a.at())).orElse(null))
                .param("by", approval.map(Approval::by).orElse(null))
                .query(ORDER)
                .single();
    }

    Order promise(OrderId id, LocalDate day) {
        return changed(id, "promised_on = :day").param("day", day).query(ORDER).single();
    }

    /** Changes an order and answers with it as it is now, in one question: it is asked for after every tick. */
    private JdbcClient.StatementSpec changed(OrderId id, String columns) {
        return jdbc.sql("update customer_order o set " + columns + ", version = version + 1"
                        + " from customer c where o.id = :id and c.id = o.customer_id returning " + OrderRow.COLUMNS)
                .param("id", id.value());
    }

    static Optional<Instant> instant(ResultSet row, String column) throws SQLException {
        return Optional.ofNullable(row.getTimestamp(column)).map(Timestamp::toInstant);
    }
}
