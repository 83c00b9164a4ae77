package puzzleworkshop.workshop;

import java.time.Duration;
import java.time.ZoneId;
import java.util.Currency;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.UnitSystem;

@Repository
class WorkshopStore {

    private final JdbcClient jdbc;

    WorkshopStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<WorkshopProfile> profile() {
        return jdbc.sql("select * from workshop_profile")
                .query((row, n) -> new WorkshopProfile(
                        row.getString("name"),
                        row.getString("address"),
                        row.getString("email"),
                        row.getString("phone"),
                        Currency.getInstance(row.getString("currency")),
                        UnitSystem.valueOf(row.getString("unit_system")),
                        ZoneId.of(row.getString("time_zone")),
                        row.getString("public_url")))
                .optional();
    }

    void saveProfile(WorkshopProfile profile) {
        jdbc.sql("""
                insert into workshop_profile (name, address, email, phone, currency, unit_system, time_zone, public_url)
                values (:name, :address, :email, :phone, :currency, :units, :zone, :publicUrl)
                on conflict (id) do update set
                    name = excluded.name, address = excluded.address, email = excluded.email, phone = excluded.phone,
                    currency = excluded.currency, unit_system = excluded.unit_system, time_zone = excluded.time_zone,
                    public_url = excluded.public_url, version = workshop_profile.version + 1
                """)
                .param("name", profile.name().strip())
                .param("address", profile.address())
                .param("email", profile.email())
                .param("phone", profile.phone())
                .param("currency", profile.currency().getCurrencyCode())
                .param("units", profile.units().name())
                .param("zone", profile.zone().getId())
                .param("publicUrl", profile.publicUrl())
                .update();
    }

    TradeNumbers tradeNumbers() {
        return jdbc.sql("select * from trade_numbers")
                .query((row, n) -> new TradeNumbers(
                        Length.mm(row.getDouble("overhang_mm")),
                        Length.mm(row.getDouble("hold_down_margin_mm")),
                        Length.mm(row.getDouble("stick_shift_mm")),
                        row.getDouble("stick_turn_degrees"),
                        row.getInt("sharp_ppi"),
                        row.getInt("good_ppi"),
                        row.getInt("soft_ppi"),
                        Length.mm(row.getDouble("smallest_piece_mm")),
                        Length.mm(row.getDouble("board_thickness_mm")),
                        Size.mm(row.getDouble("smallest_useful_width_mm"), row.getDouble("smallest_useful_height_mm")),
                        row.getInt("buffer_days"),
                        row.getInt("quote_valid_days"),
                        row.getBoolean("outline_last")))
                .single();
    }

    void saveTradeNumbers(TradeNumbers numbers) {
        jdbc.sql("""
                update trade_numbers set
                    overhang_mm = :overhang, hold_down_margin_mm = :margin, stick_shift_mm = :shift,
                    stick_turn_degrees = :turn, sharp_ppi = :sharp, good_ppi = :good, soft_ppi = :soft,
                    smallest_piece_mm = :piece, board_thickness_mm = :thickness,
                    smallest_useful_width_mm = :usefulWidth, smallest_useful_height_mm = :usefulHeight,
                    buffer_days = :buffer, quote_valid_days = :validity, outline_last = :outlineLast
                """)
                .param("overhang", numbers.overhang().mm())
                .param("margin", numbers.holdDownMargin().mm())
                .param("shift", numbers.stickShift().mm())
                .param("turn", numbers.stickTurnDegrees())
                .param("sharp", numbers.sharpPpi())
                .param("good", numbers.goodPpi())
                .param("soft", numbers.softPpi())
                .param("piece", numbers.smallestPiece().mm())
                .param("thickness", numbers.boardThickness().mm())
                .param("usefulWidth", numbers.smallestUseful().width().mm())
                .param("usefulHeight", numbers.smallestUseful().height().mm())
                .param("buffer", numbers.bufferDays())
                .param("validity", numbers.quoteValidDays())
                .param("outlineLast", numbers.outlineLast())
                .update();
    }

    Map<Stage, StageStandard> stageStandards() {
        Map<Stage, StageStandard> standards = new EnumMap<>(Stage.class);
        jdbc.sql("select * from stage_standard")
                .query((row, n) -> new StageStandard(
                        Stage.valueOf(row.getString("stage")),
                        Minutes.of(row.getDouble("set_up_minutes")),
                        Minutes.of(row.getDouble("per_puzzle_minutes")),
                        Minutes.ofSeconds(row.getDouble("per_piece_seconds")),
                        Duration.ofSeconds(Math.round(row.getDouble("waiting_hours") * 3600)),
                        new Percent(row.getBigDecimal("reject_percent"))))
                .list()
                .forEach(standard -> standards.put(standard.stage(), standard));
        return standards;
    }

    void saveStageStandard(StageStandard standard) {
        jdbc.sql("""
                update stage_standard set set_up_minutes = :setUp, per_puzzle_minutes = :perPuzzle,
                    per_piece_seconds = :perPiece, waiting_hours = :waiting, reject_percent = :rejects
                where stage = :stage
                """)
                .param("stage", standard.stage().name())
                .param("setUp", standard.setUp().value())
                .param("perPuzzle", standard.perPuzzle().value())
                .param("perPiece", standard.perPiece().toSeconds())
                .param("waiting", standard.rest().toSeconds() / 3600.0)
                .param("rejects", standard.rejects().hundredths())
                .update();
    }
}
