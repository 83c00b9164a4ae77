package puzzleworkshop.planning.calendar;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.planning.calendar.OpenHours.Span;
import puzzleworkshop.planning.calendar.WorkingTimes.FreeDay;
import puzzleworkshop.planning.calendar.WorkingTimes.KeptPerson;
import puzzleworkshop.workshop.Stage;

@Repository
class WorkingTimesStore {

    private final JdbcClient jdbc;

    WorkingTimesStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<KeptPerson> people() {
        Map<Long, OpenHours> hours = hoursBy("person_id");
        Map<Long, Set<LocalDate>> off = new HashMap<>();
        for (FreeDay day : freeDays()) {
            day.person()
                    .ifPresent(
                            id -> off.computeIfAbsent(id, p -> new HashSet<>()).add(day.day()));
        }
        return jdbc.sql("select id, name, does from working_person order by id")
                .query((row, n) -> new KeptPerson(
                        row.getLong("id"),
                        new Worker(
                                row.getString("name"),
                                hours.getOrDefault(row.getLong("id"), OpenHours.NONE),
                                off.getOrDefault(row.getLong("id"), Set.of()),
                                stages(row))))
                .list();
    }

    private static Set<Stage> stages(ResultSet row) throws SQLException {
        return Arrays.stream((Object[]) row.getArray("does").getArray())
                .map(stage -> Stage.valueOf(stage.toString()))
                .collect(Collectors.toSet());
    }

    Map<Stage.Resource, OpenHours> machineHours() {
        Map<String, OpenHours> byName = hoursBy("machine");
        Map<Stage.Resource, OpenHours> hours = new EnumMap<>(Stage.Resource.class);
        byName.forEach((name, open) -> hours.put(Stage.Resource.valueOf(name), open));
        return hours;
    }

    @SuppressWarnings("unchecked")
    private <T> Map<T, OpenHours> hoursBy(String column) {
        record Row(Object of, DayOfWeek day, Span span) {}
        Map<T, Map<DayOfWeek, List<Span>>> spans = jdbc
                .sql("select * from working_hours where " + column + " is not null order by weekday, from_minute")
                .query((row, n) -> new Row(
                        row.getObject(column),
                        DayOfWeek.of(row.getInt("weekday")),
                        new Span(row.getInt("from_minute"), row.getInt("to_minute"))))
                .list()
                .stream()
                .collect(Collectors.groupingBy(
                        row -> (T) row.of(),
                        Collectors.groupingBy(Row::day, Collectors.mapping(Row::span, Collectors.toList()))));
        Map<T, OpenHours> hours = new HashMap<>();
        spans.forEach((of, days) -> hours.put(of, new OpenHours(days)));
        return hours;
    }

    long insert(String name) {
        return jdbc.sql("insert into working_person (name, does) values (:name, '{}') returning id")
                .param("name", name)
                .query(Long.class)
                .single();
    }

    void update(long id, String name, Set<Stage> does) {
        jdbc.sql("update working_person set name = :name, does = :does where id = :id")
                .param("name", name)
                .param("does", does.stream().map(Enum::name).toArray(String[]::new))
                .param("id", id)
                .update();
    }

    void replaceHours(Long person, Stage.Resource machine, OpenHours hours) {
        jdbc.sql("delete from working_hours where person_id = :person or machine = :machine")
                .param("person", person)
                .param("machine", machine == null ? null : machine.name())
                .update();
        hours.byDay()
                .forEach((day, spans) -> spans.forEach(span -> jdbc.sql("""
                    insert into working_hours (person_id, machine, weekday, from_minute, to_minute)
                    values (:person, :machine, :day, :from, :to)
                    """)
                        .param("person", person)
                        .param("machine", machine == null ? null : machine.name())
                        .param("day", day.getValue())
                        .param("from", span.from())
                        .param("to", span.to())
                        .update()));
    }

    void deletePerson(long id) {
        jdbc.sql("delete from working_person where id = :id").param("id", id).update();
    }

    List<FreeDay> freeDays() {
        return jdbc.sql("select * from free_day order by day, person_id nulls first")
                .query((row, n) -> new FreeDay(
                        row.getLong("id"),
                        Optional.ofNullable(row.getObject("person_id", Long.class)),
                        row.getObject("day", LocalDate.class),
                        row.getString("note"),
                        row.getBoolean("delivered")))
                .list();
    }

    void addFreeDay(Long person, LocalDate day, String note, boolean delivered) {
        jdbc.sql("""
            insert into free_day (person_id, day, note, delivered) values (:person, :day, :note, :delivered)
            on conflict on constraint free_day_once
            do update set note = excluded.note, delivered = excluded.delivered
            """)
                .param("person", person)
                .param("day", day)
                .param("note", note)
                .param("delivered", delivered)
                .update();
    }

    void deleteFreeDay(long id) {
        jdbc.sql("delete from free_day where id = :id").param("id", id).update();
    }

    List<WorkingCalendar.Evening> evenings() {
        return jdbc.sql("""
            select p.name, e.day, e.from_minute, e.to_minute
            from agreed_evening e join working_person p on p.id = e.person_id order by e.day, p.name
            """)
                .query((row, n) -> new WorkingCalendar.Evening(
                        row.getString("name"),
                        row.getObject("day", LocalDate.class),
                        new Span(row.getInt("from_minute"), row.getInt("to_minute"))))
                .list();
    }

    void addEvening(WorkingCalendar.Evening evening) {
        jdbc.sql("""
            insert into agreed_evening (person_id, day, from_minute, to_minute)
            select id, :day, :from, :to from working_person where name = :person
            on conflict on constraint agreed_evening_once do update set
                from_minute = least(agreed_evening.from_minute, excluded.from_minute),
                to_minute = greatest(agreed_evening.to_minute, excluded.to_minute)
            """)
                .param("person", evening.person())
                .param("day", evening.day())
                .param("from", evening.span().from())
                .param("to", evening.span().to())
                .update();
    }

    void deleteEvening(String person, LocalDate day) {
        jdbc.sql("""
            delete from agreed_evening e using working_person p
            where p.id = e.person_id and p.name = :person and e.day = :day
            """).param("person", person).param("day", day).update();
    }

    List<DeliveryWay> ways() {
        return jdbc.sql("select * from delivery_way order by usual desc, name")
                .query((row, n) -> new DeliveryWay(
                        row.getLong("id"),
                        row.getString("name"),
                        weekdays(row, "leaves_on"),
                        row.getObject("cut_off", LocalTime.class),
                        row.getInt("days_on_the_way"),
                        weekdays(row, "arrives_on")))
                .list();
    }

    private static Set<DayOfWeek> weekdays(ResultSet row, String column) throws SQLException {
        return Arrays.stream((Object[]) row.getArray(column).getArray())
                .map(day -> DayOfWeek.of(((Number) day).intValue()))
                .collect(Collectors.toSet());
    }

    long insert(DeliveryWay way) {
        return bind(jdbc.sql("""
            insert into delivery_way (name, leaves_on, cut_off, days_on_the_way, arrives_on)
            values (:name, :leaves, :cutOff, :days, :arrives) returning id
            """), way).query(Long.class).single();
    }

    void update(DeliveryWay way) {
        bind(jdbc.sql("""
            update delivery_way set name = :name, leaves_on = :leaves, cut_off = :cutOff, days_on_the_way = :days,
                arrives_on = :arrives where id = :id
            """), way).param("id", way.id()).update();
    }

    private static JdbcClient.StatementSpec bind(JdbcClient.StatementSpec sql, DeliveryWay way) {
        return sql.param("name", way.name().strip())
                .param("leaves", numbers(way.leavesOn()))
                .param("cutOff", way.cutOff())
                .param("days", way.daysOnTheWay())
                .param("arrives", numbers(way.arrivesOn()));
    }

    private static Short[] numbers(Collection<DayOfWeek> days) {
        return days.stream().sorted().map(day -> (short) day.getValue()).toArray(Short[]::new);
    }

    /** Refused by the database while an order leaves by it. */
    boolean deleteWay(long id) {
        return jdbc.sql("delete from delivery_way where id = :id and not usual")
                        .param("id", id)
                        .update()
                == 1;
    }

    void makeUsual(long id) {
        jdbc.sql("update delivery_way set usual = false where usual").update();
        jdbc.sql("update delivery_way set usual = true where id = :id")
                .param("id", id)
                .update();
    }
}
