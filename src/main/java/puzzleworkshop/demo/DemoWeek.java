package puzzleworkshop.demo;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.planning.calendar.OpenHours;
import puzzleworkshop.planning.calendar.OpenHours.Span;
import puzzleworkshop.planning.calendar.Worker;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.calendar.WorkingTimes.KeptPerson;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** When the demo workshop works: the laser runs three hours a day, as agreed with the neighbours, and is the narrow place. */
@Component
class DemoWeek {

    private final WorkingTimes times;
    private final SheetRack rack;
    private final Workshop workshop;

    DemoWeek(WorkingTimes times, SheetRack rack, Workshop workshop) {
        this.times = times;
        this.rack = rack;
        this.workshop = workshop;
    }

    /** The maker's name and the laser's hours. */
    void prepare() {
        KeptPerson maker = times.people().getFirst();
        Worker as = maker.person();
        times.save(Optional.of(maker.id()), new Worker(DemoStock.MAKER, as.hours(), as.daysOff(), as.does()));
        times.saveHours(Stage.Resource.LASER, OpenHours.weekdays(Span.of(LocalTime.of(9, 0), LocalTime.of(12, 0))));
    }

    /** Fresh ones for a busy week. */
    void boards() {
        for (int i = 0; i < 8; i++) {
            rack.add(
                    Outline.rectangle(Size.mm(610, 410)),
                    BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)).at("L4"),
                    Money.of("6.80", workshop.currency().getCurrencyCode()),
                    DemoStock.MAKER);
        }
    }

    /** The number of the way of delivery with that name. */
    long way(String name) {
        return times.ways().stream()
                .filter(way -> way.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("The demo's script names a way that is none: " + name))
                .id();
    }

    /** So many working days from today, today not counted. */
    LocalDate workingDay(int ahead) {
        LocalDate day = workshop.today();
        for (int left = ahead; left > 0; ) {
            day = day.plusDays(1);
            left -= times.calendar().isWorkingDay(day) ? 1 : 0;
        }
        return day;
    }
}
