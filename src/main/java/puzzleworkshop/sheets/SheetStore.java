package puzzleworkshop.sheets;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.OutlineText;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Grain;

@Repository
public class SheetStore {

    /** A sheet as the search for a place needs it, without the rest. */
    public record Candidate(SheetId id, String outline, Grain grain) {}

    private static final String SHEETS = """
        select s.*, p.sheet_id is not null as has_photo,
               r.id as reservation_id, r.order_id, o.number as order_number, r.x_mm, r.y_mm, r.degrees, r.who, r.reserved_at,
               r.width_mm as blank_width_mm, r.height_mm as blank_height_mm
        from sheet s
        left join sheet_photo p on p.sheet_id = s.id
        left join sheet_reservation r on r.sheet_id = s.id and r.ended_at is null
        left join order_ref o on o.id = r.order_id
        """;

    private static final String FILTER = """
        where (cardinality(:states::text[]) = 0 and s.state <> 'WITHDRAWN' or s.state = any(:states::text[]))
          and (:material::text is null or s.material = :material)
          and (:thickness::double precision is null or s.nominal_mm = :thickness)
          and (:ids::bigint[] is null or s.id = any(:ids))
          and (:text = '' or s.id::text = :text or s.place ilike '%' || :text || '%' or s.note ilike '%' || :text || '%')
        """;

    private final JdbcClient jdbc;

    SheetStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    SheetId add(Outline outline, BoardFacts facts, Money cost, OptionalLong fromCut, Instant now) {
        Size bounds = outline.bounds();
        return new SheetId(jdbc.sql("""
            insert into sheet (outline, width_mm, height_mm, area_mm2, material, grade, nominal_mm, measured_mm, bow_mm,
                past, grain, place, note, cost, currency, state, from_cut, entered_at, state_since)
            values (:outline, :width, :height, :area, :material, :grade, :nominal, :measured, :bow,
                :past, :grain, :place, :note, :cost, :currency, 'FREE', :fromCut, :now, :now)
            returning id
            """)
                .param("outline", OutlineText.write(outline))
                .param("width", bounds.width().mm())
                .param("height", bounds.height().mm())
                .param("area", outline.area().mm2())
                .param("material", facts.material())
                .param("grade", facts.grade().name())
                .param("nominal", facts.nominal().mm())
                .param("measured", facts.measured().map(Length::mm).orElse(null))
                .param("bow", facts.bow().mm())
                .param("past", facts.past().name())
                .param("grain", facts.grain().name())
                .param("place", facts.place().strip())
                .param("note", facts.note().strip())
                .param("cost", cost.amount())
                .param("currency", cost.currency().getCurrencyCode())
                .param("fromCut", fromCut.isPresent() ? fromCut.getAsLong() : null)
                .param("now", at(now))
                .query(Long.class)
                .single());
    }

    /** False when somebody else changed it meanwhile. */
    boolean change(SheetId id, BoardFacts facts, Money cost, long version) {
        return jdbc.sql("""
            update sheet set material = :material, grade = :grade, nominal_mm = :nominal, measured_mm = :measured,
                bow_mm = :bow, past = :past, grain = :grain, place = :place, note = :note, cost = :cost,
                version = version + 1
            where id = :id and version = :version
            """)
                        .param("material", facts.material())
                        .param("grade", facts.grade().name())
                        .param("nominal", facts.nominal().mm())
                        .param("measured", facts.measured().map(Length::mm).orElse(null))
                        .param("bow", facts.bow().mm())
                        .param("past", facts.past().name())
                        .param("grain", facts.grain().name())
                        .param("place", facts.place().strip())
                        .param("note", facts.note().strip())
                        .param("cost", cost.amount())
                        .param("id", id.value())
                        .param("version", version)
                        .update()
                == 1;
    }

    boolean reshape(SheetId id, Outline outline, long version) {
        Size bounds = outline.bounds();
        return jdbc.sql("""
            update sheet set outline = :outline, width_mm = :width, height_mm = :height, area_mm2 = :area,
                version = version + 1
            where id = :id and version = :version and state = 'FREE'
            """)
                        .param("outline", OutlineText.write(outline))
                        .param("width", bounds.width().mm())
                        .param("height", bounds.height().mm())
                        .param("area", outline.area().mm2())
                        .param("id", id.value())
                        .param("version", version)
                        .update()
                == 1;
    }

    /** The state it has now, and its row locked until the transaction ends. */
    public Optional<SheetState> lock(SheetId id) {
        return jdbc.sql("select state from sheet where id = :id for update")
                .param("id", id.value())
                .query(String.class)
                .optional()
                .map(SheetState::valueOf);
    }

    /** As {@link #lock}, for a sheet that must be there. */
    SheetState locked(SheetId id) {
        return lock(id).orElseThrow(() -> unknown(id));
    }

    public void turn(SheetId id, SheetState state, Instant now) {
        jdbc.sql("update sheet set state = :state, state_since = :now, version = version + 1 where id = :id")
                .param("state", state.name())
                .param("now", at(now))
                .param("id", id.value())
                .update();
    }

    public Optional<Sheet> find(SheetId id) {
        return jdbc.sql(SHEETS + " where s.id = :id")
                .param("id", id.value())
                .query(SheetRow::sheet)
                .optional();
    }

    public List<Sheet> all(Collection<SheetId> ids) {
        return jdbc.sql(SHEETS + " where s.id = any (:ids)")
                .param("ids", ids.stream().map(SheetId::value).toArray(Long[]::new))
                .query(SheetRow::sheet)
                .list();
    }

    Sheet get(SheetId id) {
        return find(id).orElseThrow(() -> unknown(id));
    }

    private static Refused unknown(SheetId id) {
        return new Refused("sheets.unknown", id.toString());
    }

    List<Sheet> list(RackFilter filter, Optional<Set<Long>> ids, int offset, int limit) {
        return filtered(SHEETS + FILTER + " order by s.id desc offset :offset limit :limit", filter, ids)
                .param("offset", offset)
                .param("limit", limit)
                .query(SheetRow::sheet)
                .list();
    }

    int count(RackFilter filter, Optional<Set<Long>> ids) {
        return filtered("select count(*) from sheet s " + FILTER, filter, ids)
                .query(Integer.class)
                .single();
    }

    private JdbcClient.StatementSpec filtered(String sql, RackFilter filter, Optional<Set<Long>> ids) {
        return jdbc.sql(sql)
                .param("states", filter.states().stream().map(Enum::name).toArray(String[]::new))
                .param("material", filter.material().orElse(null))
                .param("thickness", filter.thickness().map(Length::mm).orElse(null))
                .param("ids", ids.map(set -> set.toArray(Long[]::new)).orElse(null))
                .param("text", filter.text().strip());
    }

    List<Candidate> candidates(Set<SheetState> states) {
        return jdbc.sql("select id, outline, grain from sheet where state = any(:states::text[]) order by id")
                .param("states", states.stream().map(Enum::name).toArray(String[]::new))
                .query(SheetRow::candidate)
                .list();
    }

    /** Free sheets that the rules allow for the wish, whatever their shape. */
    public List<Candidate> candidates(BlankWish wish, Length slack) {
        return jdbc.sql("""
            select id, outline, grain from sheet
            where state = 'FREE' and past = 'CLEAN' and bow_mm <= :bow
              and abs(coalesce(measured_mm, nominal_mm) - :thickness) <= :slack + 1e-9
              and (cardinality(:materials::text[]) = 0 or material = any(:materials::text[]))
              and (cardinality(:grades::text[]) = 0 or grade = any(:grades::text[]))
              and area_mm2 >= :area - 1
            order by id
            """)
                .param("bow", wish.mostBow().mm())
                .param("thickness", wish.thickness().mm())
                .param("slack", slack.mm())
                .param("materials", wish.materials().toArray(String[]::new))
                .param("grades", wish.grades().stream().map(Enum::name).toArray(String[]::new))
                .param("area", wish.size().area().mm2())
                .query(SheetRow::candidate)
                .list();
    }

    /** Free or held. */
    int lying() {
        return jdbc.sql("select count(*) from sheet where state in ('FREE', 'RESERVED')")
                .query(Integer.class)
                .single();
    }

    /** Another text as soon as any sheet has come, changed or gone. */
    String stamp() {
        return jdbc.sql("select count(*) || '/' || coalesce(sum(version), 0) from sheet")
                .query(String.class)
                .single();
    }

    List<SheetId> children(SheetId parent) {
        return jdbc.sql("""
            select s.id from sheet s join sheet_cut c on c.id = s.from_cut
            where c.sheet_id = :id and c.undone_at is null order by s.id
            """).param("id", parent.value()).query(Long.class).list().stream()
                .map(SheetId::new)
                .toList();
    }

    Optional<SheetId> parent(long cut) {
        return jdbc.sql("select sheet_id from sheet_cut where id = :id")
                .param("id", cut)
                .query(Long.class)
                .optional()
                .map(SheetId::new);
    }

    public void note(SheetId id, String what, String detail, String who, Instant now) {
        jdbc.sql("insert into sheet_history (sheet_id, at, who, what, detail) values (:id, :now, :who, :what, :detail)")
                .param("id", id.value())
                .param("now", at(now))
                .param("who", who)
                .param("what", what)
                .param("detail", detail)
                .update();
    }

    List<SheetHistoryLine> history(SheetId id) {
        return jdbc.sql("select at, who, what, detail from sheet_history where sheet_id = :id order by id desc limit"
                        + " 200")
                .param("id", id.value())
                .query((row, n) -> new SheetHistoryLine(
                        row.getObject("at", OffsetDateTime.class).toInstant(),
                        row.getString("who"),
                        Sentence.of("sheets.history." + row.getString("what"), row.getString("detail"))))
                .list();
    }

    void photo(SheetId id, byte[] jpeg, Instant now) {
        jdbc.sql("""
            insert into sheet_photo (sheet_id, content, added_at) values (:id, :content, :now)
            on conflict (sheet_id) do update set content = excluded.content, added_at = excluded.added_at
            """)
                .param("id", id.value())
                .param("content", jpeg)
                .param("now", at(now))
                .update();
    }

    Optional<byte[]> photo(SheetId id) {
        return jdbc.sql("select content from sheet_photo where sheet_id = :id")
                .param("id", id.value())
                .query(byte[].class)
                .optional();
    }

    List<String> places() {
        return jdbc.sql("select distinct place from sheet where place <> '' and state in ('FREE', 'RESERVED') order by"
                        + " 1 limit 500")
                .query(String.class)
                .list();
    }

    List<Double> thicknesses() {
        return new ArrayList<>(jdbc.sql("select distinct nominal_mm from sheet where state <> 'WITHDRAWN' order by 1")
                .query(Double.class)
                .list());
    }

    List<StockedKind> kinds() {
        return jdbc.sql("""
            select material, grade, nominal_mm, count(*) as sheets
            from sheet
            where state in ('FREE', 'RESERVED')
            group by material, grade, nominal_mm
            order by count(*) filter (where state = 'FREE') desc, count(*) desc, material, grade, nominal_mm
            """)
                .query((row, n) -> new StockedKind(
                        row.getString("material"),
                        Grade.valueOf(row.getString("grade")),
                        Length.mm(row.getDouble("nominal_mm")),
                        row.getInt("sheets")))
                .list();
    }

    public static OffsetDateTime at(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }
}
