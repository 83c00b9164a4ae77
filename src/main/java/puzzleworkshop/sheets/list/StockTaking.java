package puzzleworkshop.sheets.list;

import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.SheetStore;

/** Walking along the rack and ticking off what is there; one walk at a time, by as many people as like. */
@Service
@Transactional
public class StockTaking {

    /**
     * A walk that is going on. Sheets entered since it began are there, nobody need tick them.
     *
     * @param expected sheets that should be found
     */
    public record Walk(long id, String who, Instant startedAt, int seen, int expected) {}

    /**
     * How a walk ended.
     *
     * @param missing not found; of these so many left the rack
     * @param fresh entered while the walk went on
     */
    public record Outcome(List<SheetId> missing, int left, List<SheetId> fresh) {}

    private final JdbcClient jdbc;
    private final SheetStore sheets;
    private final Clock clock;

    StockTaking(JdbcClient jdbc, SheetStore sheets, Clock clock) {
        this.jdbc = jdbc;
        this.sheets = sheets;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public Optional<Walk> current() {
        return jdbc.sql("""
                select t.id, t.who, t.started_at,
                    (select count(*) from stock_take_seen n join sheet s on s.id = n.sheet_id
                     where n.stock_take_id = t.id and s.state in ('FREE', 'RESERVED')
                       and s.entered_at < t.started_at) as seen,
                    (select count(*) from sheet s where s.state in ('FREE', 'RESERVED')
                       and s.entered_at < t.started_at) as expected
                from stock_take t where t.finished_at is null
                """)
                .query((row, n) -> new Walk(
                        row.getLong("id"),
                        row.getString("who"),
                        row.getObject("started_at", OffsetDateTime.class).toInstant(),
                        row.getInt("seen"),
                        row.getInt("expected")))
                .optional();
    }

    public Walk start(String who) {
        if (current().isEmpty()) {
            jdbc.sql("insert into stock_take (who, started_at) values (:who, :now) on conflict do nothing")
                    .param("who", who)
                    .param("now", SheetStore.at(clock.instant()))
                    .update();
        }
        return current().orElseThrow();
    }

    /** Ticks a sheet; one that was thought lost or thrown away is back in the rack by that. Twice is fine. */
    public Sheet seen(SheetId id, String who) {
        Walk walk = current().orElseThrow(() -> new Refused("sheets.stock.none"));
        SheetState state = sheets.lock(id).orElseThrow(() -> new Refused("sheets.unknown", id.toString()));
        if (state == SheetState.SCRAPPED) {
            sheets.turn(id, SheetState.FREE, clock.instant());
            sheets.note(id, "broughtback", "", who, clock.instant());
        } else if (!state.inRack()) {
            throw new Refused("sheets.stock.notinrack", id.toString());
        }
        jdbc.sql("""
                insert into stock_take_seen (stock_take_id, sheet_id, seen_at, who) values (:walk, :id, :now, :who)
                on conflict do nothing
                """)
                .param("walk", walk.id())
                .param("id", id.value())
                .param("now", SheetStore.at(clock.instant()))
                .param("who", who)
                .update();
        return sheets.find(id).orElseThrow();
    }

    /** Whether it was ticked on the walk that is going on. */
    @Transactional(readOnly = true)
    public boolean isSeen(SheetId id) {
        return jdbc.sql("""
                select exists (select from stock_take_seen n join stock_take t on t.id = n.stock_take_id
                               where n.sheet_id = :id and t.finished_at is null)
                """).param("id", id.value()).query(Boolean.class).single();
    }

    /** A tick was a mistake. */
    public void notSeen(SheetId id) {
        current()
                .ifPresent(
                        walk -> jdbc.sql("delete from stock_take_seen where stock_take_id = :walk and sheet_id = :id")
                                .param("walk", walk.id())
                                .param("id", id.value())
                                .update());
    }

    /** What should be in the rack and is not ticked yet, by place. */
    @Transactional(readOnly = true)
    public List<SheetId> missing(int offset, int limit) {
        return jdbc.sql("""
                select s.id from sheet s
                join stock_take t on t.finished_at is null
                where s.state in ('FREE', 'RESERVED') and s.entered_at < t.started_at and not exists (
                    select from stock_take_seen n where n.sheet_id = s.id and n.stock_take_id = t.id)
                order by s.place, s.id offset :offset limit :limit
                """).param("offset", offset).param("limit", limit).query(Long.class).list().stream()
                .map(SheetId::new)
                .toList();
    }

    /** Ends the walk. @param scrapMissing whether free sheets that were not found leave the rack; held ones never do */
    public Outcome finish(boolean scrapMissing, String who) {
        Walk walk = current().orElseThrow(() -> new Refused("sheets.stock.none"));
        List<SheetId> missing = missing(0, Integer.MAX_VALUE);
        int left = 0;
        // Rows are locked lowest number first, as everywhere.
        List<SheetId> leaving = scrapMissing
                ? missing.stream()
                        .sorted(Comparator.comparingLong(SheetId::value))
                        .toList()
                : List.of();
        for (SheetId id : leaving) {
            if (sheets.lock(id).orElseThrow() == SheetState.FREE) {
                sheets.turn(id, SheetState.SCRAPPED, clock.instant());
                sheets.note(id, "missing", "", who, clock.instant());
                left++;
            }
        }
        jdbc.sql("update stock_take set finished_at = :now where id = :id")
                .param("now", SheetStore.at(clock.instant()))
                .param("id", walk.id())
                .update();
        return new Outcome(missing, left, enteredSince(walk));
    }

    private List<SheetId> enteredSince(Walk walk) {
        return jdbc
                .sql("select id from sheet where entered_at >= :start and state in ('FREE', 'RESERVED') order by id")
                .param("start", SheetStore.at(walk.startedAt()))
                .query(Long.class)
                .list()
                .stream()
                .map(SheetId::new)
                .toList();
    }
}
