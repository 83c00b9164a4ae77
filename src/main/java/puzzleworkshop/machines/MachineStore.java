package puzzleworkshop.machines;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;

@Repository
class MachineStore {

    private final JdbcClient jdbc;

    MachineStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<Machine> all() {
        Map<Long, List<WearRow>> wear = jdbc
                .sql("select * from cutting_wear_part order by machine_id, name")
                .query((row, n) -> wearRow(row))
                .list()
                .stream()
                .collect(Collectors.groupingBy(WearRow::machineId));
        return jdbc.sql("select * from cutting_machine order by retired, not standard, lower(name)")
                .query((row, n) -> machine(row, wear.getOrDefault(row.getLong("id"), List.of())))
                .list();
    }

    Optional<Machine> find(long id) {
        List<WearRow> wear = jdbc.sql("select * from cutting_wear_part where machine_id = :id order by name")
                .param("id", id)
                .query((row, n) -> wearRow(row))
                .list();
        return jdbc.sql("select * from cutting_machine where id = :id")
                .param("id", id)
                .query((row, n) -> machine(row, wear))
                .optional();
    }

    Optional<Long> standard() {
        return jdbc.sql("select id from cutting_machine where standard")
                .query(Long.class)
                .optional();
    }

    long insert(Machine machine) {
        return bound(jdbc.sql("""
            insert into cutting_machine (name, bed_width_mm, bed_height_mm, power_w, wavelength_nm, lens_gap_mm,
                kerf_mm, max_travel_mm_s, max_cut_mm_s, acceleration_mm_s2, corner_deviation_mm, bow_limit_mm,
                set_up_minutes, pass_pause_seconds, currency, price, residual, life_hours, power_kw, yearly_upkeep,
                yearly_hours, origin_corner, x_to_right, y_to_back, coordinate_unit, feed_unit, takes_gcode,
                power_follows_speed, full_power, air_word, dwell_in_seconds, frame_power_percent)
            values (:name, :bedWidth, :bedHeight, :power, :wavelength, :gap, :kerf, :travel, :cut, :acceleration,
                :corner, :bow, :setUp, :pause, :currency, :price, :residual, :life, :kw, :upkeep, :yearlyHours,
                :origin, :xRight, :yBack, :coordinates, :feed, :gcode, :dynamic, :full, :air, :dwell, :frame)
            returning id
            """), machine).query(Long.class).single();
    }

    void update(Machine machine) {
        bound(jdbc.sql("""
            update cutting_machine set name = :name, bed_width_mm = :bedWidth, bed_height_mm = :bedHeight,
                power_w = :power, wavelength_nm = :wavelength, lens_gap_mm = :gap, kerf_mm = :kerf,
                max_travel_mm_s = :travel, max_cut_mm_s = :cut, acceleration_mm_s2 = :acceleration,
                corner_deviation_mm = :corner, bow_limit_mm = :bow, set_up_minutes = :setUp,
                pass_pause_seconds = :pause, currency = :currency, price = :price, residual = :residual,
                life_hours = :life, power_kw = :kw, yearly_upkeep = :upkeep, yearly_hours = :yearlyHours,
                origin_corner = :origin, x_to_right = :xRight, y_to_back = :yBack, coordinate_unit = :coordinates,
                feed_unit = :feed, takes_gcode = :gcode, power_follows_speed = :dynamic, full_power = :full,
                air_word = :air, dwell_in_seconds = :dwell, frame_power_percent = :frame,
                version = version + 1
            where id = :id
            """), machine).param("id", machine.id()).update();
    }

    void replaceWearParts(long machineId, List<WearPart> parts) {
        jdbc.sql("delete from cutting_wear_part where machine_id = :id")
                .param("id", machineId)
                .update();
        for (WearPart part : parts) {
            jdbc.sql("insert into cutting_wear_part values (:id, :name, :price, :life)")
                    .param("id", machineId)
                    .param("name", part.name().strip())
                    .param("price", part.price().amount())
                    .param("life", part.lifeHours())
                    .update();
        }
    }

    void makeStandard(long id) {
        jdbc.sql("update cutting_machine set standard = false where standard and id <> :id")
                .param("id", id)
                .update();
        jdbc.sql("update cutting_machine set standard = true, retired = false where id = :id")
                .param("id", id)
                .update();
    }

    void retire(long id, boolean retired) {
        jdbc.sql("update cutting_machine set retired = :retired, standard = standard and not :retired where id = :id")
                .param("id", id)
                .param("retired", retired)
                .update();
    }

    private static JdbcClient.StatementSpec bound(JdbcClient.StatementSpec sql, Machine machine) {
        MachineCosts costs = machine.costs();
        return sql.param("name", machine.name())
                .param("bedWidth", machine.bed().width().mm())
                .param("bedHeight", machine.bed().height().mm())
                .param("power", machine.beam().powerWatts())
                .param("wavelength", machine.beam().wavelengthNm())
                .param("gap", machine.beam().lensGap().mm())
                .param("kerf", machine.beam().kerf().mm())
                .param("travel", machine.motion().maxTravel().mmPerSecond())
                .param("cut", machine.motion().maxCut().mmPerSecond())
                .param("acceleration", machine.motion().acceleration())
                .param("corner", machine.motion().cornerDeviation().mm())
                .param("bow", machine.bowLimit().mm())
                .param("setUp", machine.setUp().value())
                .param("pause", machine.passPause().toSeconds())
                .param("currency", costs.currency().getCurrencyCode())
                .param("price", costs.price().amount())
                .param("residual", costs.residual().amount())
                .param("life", costs.lifeHours())
                .param("kw", costs.powerKw())
                .param("upkeep", costs.yearlyUpkeep().amount())
                .param("yearlyHours", costs.yearlyHours())
                .param("origin", machine.control().axes().origin().name())
                .param("xRight", machine.control().axes().xToRight())
                .param("yBack", machine.control().axes().yToBack())
                .param("coordinates", machine.control().axes().unit().name())
                .param("feed", machine.control().feed().name())
                .param("gcode", machine.control().takesGcode())
                .param("dynamic", machine.control().words().dynamic())
                .param("full", machine.control().words().fullPower())
                .param("air", machine.control().words().airOn())
                .param("dwell", machine.control().words().secondsInDwell())
                .param("frame", machine.control().framePower().hundredths());
    }

    private static MachineControl control(ResultSet row) throws SQLException {
        return new MachineControl(
                new MachineAxes(
                        BedCorner.valueOf(row.getString("origin_corner")),
                        row.getBoolean("x_to_right"),
                        row.getBoolean("y_to_back"),
                        MachineAxes.Unit.valueOf(row.getString("coordinate_unit"))),
                FeedUnit.valueOf(row.getString("feed_unit")),
                row.getBoolean("takes_gcode"),
                new BeamWords(
                        row.getBoolean("power_follows_speed"),
                        row.getInt("full_power"),
                        row.getString("air_word"),
                        row.getBoolean("dwell_in_seconds")),
                new Percent(row.getBigDecimal("frame_power_percent")));
    }

    private static Machine machine(ResultSet row, List<WearRow> wear) throws SQLException {
        Currency currency = Currency.getInstance(row.getString("currency"));
        return new Machine(
                row.getLong("id"),
                row.getString("name"),
                Size.mm(row.getDouble("bed_width_mm"), row.getDouble("bed_height_mm")),
                new Beam(
                        row.getDouble("power_w"),
                        row.getInt("wavelength_nm"),
                        Length.mm(row.getDouble("lens_gap_mm")),
                        Length.mm(row.getDouble("kerf_mm"))),
                new Motion(
                        Speed.mmPerSecond(row.getDouble("max_travel_mm_s")),
                        Speed.mmPerSecond(row.getDouble("max_cut_mm_s")),
                        row.getDouble("acceleration_mm_s2"),
                        Length.mm(row.getDouble("corner_deviation_mm"))),
                Length.mm(row.getDouble("bow_limit_mm")),
                Minutes.of(row.getDouble("set_up_minutes")),
                Minutes.ofSeconds(row.getDouble("pass_pause_seconds")),
                new MachineCosts(
                        Money.of(row.getBigDecimal("price"), currency),
                        Money.of(row.getBigDecimal("residual"), currency),
                        row.getDouble("life_hours"),
                        row.getDouble("power_kw"),
                        Money.of(row.getBigDecimal("yearly_upkeep"), currency),
                        row.getDouble("yearly_hours"),
                        wear.stream().map(part -> part.in(currency)).toList()),
                control(row),
                row.getBoolean("standard"),
                row.getBoolean("retired"));
    }

    private static WearRow wearRow(ResultSet row) throws SQLException {
        return new WearRow(
                row.getLong("machine_id"),
                row.getString("name"),
                row.getBigDecimal("price"),
                row.getDouble("life_hours"));
    }

    private record WearRow(long machineId, String name, java.math.BigDecimal price, double lifeHours) {
        WearPart in(Currency currency) {
            return new WearPart(name, Money.of(price, currency), lifeHours);
        }
    }
}
