package puzzleworkshop.planning.calendar;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.planning.calendar.OpenHours.Span;
import puzzleworkshop.workshop.Stage;

/**
 * When there are hands, and when the printer and the laser may run. A machine runs only while somebody who is allowed
 * to run it is in the workshop: a laser is never left alone, whatever hours it is given here.
 *
 * <p>All hours are the workshop's local time. The change of clocks falls in the night; a waiting time across it may be
 * an hour off, which no plan of days notices.
 *
 * @param people at least one for anything to be planned
 * @param laser hours in which the neighbours and the extraction allow it
 * @param printer hours of the printer
 * @param free days on which nobody works
 * @param evenings extra hours agreed for single days
 */
public record WorkingCalendar(
        List<Worker> people, OpenHours laser, OpenHours printer, FreeDays free, List<Evening> evenings) {

    /**
     * Extra hours on one day, in which the person named works and the machines may run.
     *
     * @param person name of the one who stays
     */
    public record Evening(String person, LocalDate day, Span span) {}

    public WorkingCalendar {
        people = List.copyOf(people);
        evenings = List.copyOf(evenings);
    }

    /** The same with one more evening. */
    public WorkingCalendar with(Evening evening) {
        List<Evening> more = new ArrayList<>(evenings);
        more.add(evening);
        return new WorkingCalendar(people, laser, printer, free, more);
    }

    /** Spans in which the person works on the day, ascending, merged. */
    public List<Span> of(Worker person, LocalDate day) {
        List<Span> spans = new ArrayList<>();
        if (!free.closed().contains(day) && !person.daysOff().contains(day)) {
            spans.addAll(person.hours().on(day.getDayOfWeek()));
        }
        evenings.stream()
                .filter(e -> e.day().equals(day) && e.person().equals(person.name()))
                .map(Evening::span)
                .forEach(spans::add);
        return union(spans);
    }

    /** Spans in which the machine may run on the day: its own hours, and somebody there who may run it. */
    public List<Span> of(Stage.Resource machine, LocalDate day) {
        Stage stage = machine == Stage.Resource.LASER ? Stage.CUT : Stage.PRINT;
        List<Span> present = new ArrayList<>();
        for (Worker person : people) {
            if (machine == Stage.Resource.HANDS || person.does().contains(stage)) {
                present.addAll(of(person, day));
            }
        }
        present = union(present);
        if (machine == Stage.Resource.HANDS) {
            return present;
        }
        List<Span> open = new ArrayList<>((machine == Stage.Resource.LASER ? laser : printer).on(day.getDayOfWeek()));
        evenings.stream().filter(e -> e.day().equals(day)).map(Evening::span).forEach(open::add);
        return intersection(union(open), present);
    }

    /** Whether anybody works on the day. */
    public boolean isWorkingDay(LocalDate day) {
        return people.stream().anyMatch(person -> !of(person, day).isEmpty());
    }

    /** Minutes of the resource on the day; for hands those of all people together. */
    public int capacity(Stage.Resource resource, LocalDate day) {
        return resource == Stage.Resource.HANDS
                ? people.stream().mapToInt(person -> sum(of(person, day))).sum()
                : sum(of(resource, day));
    }

    static int sum(List<Span> spans) {
        return spans.stream().mapToInt(Span::minutes).sum();
    }

    private static List<Span> union(List<Span> spans) {
        List<Span> merged = new ArrayList<>();
        for (Span span :
                spans.stream().sorted(Comparator.comparingInt(Span::from)).toList()) {
            if (!merged.isEmpty() && merged.getLast().to() >= span.from()) {
                Span last = merged.removeLast();
                merged.add(new Span(last.from(), Math.max(last.to(), span.to())));
            } else {
                merged.add(span);
            }
        }
        return merged;
    }

    private static List<Span> intersection(List<Span> one, List<Span> other) {
        List<Span> both = new ArrayList<>();
        for (Span a : one) {
            for (Span b : other) {
                int from = Math.max(a.from(), b.from());
                int to = Math.min(a.to(), b.to());
                if (from < to) {
                    both.add(new Span(from, to));
                }
            }
        }
        return both;
    }
}
