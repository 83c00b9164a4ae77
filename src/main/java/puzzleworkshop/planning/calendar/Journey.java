package puzzleworkshop.planning.calendar;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.measure.Sentence;

/**
 * When something that is ready leaves by a way of delivery and when it is there, with what both days hang on.
 *
 * @param ready when it could leave
 * @param leaves the last moment on the day on which it leaves
 * @param arrives the day on which it is there
 */
public record Journey(DeliveryWay way, FreeDays free, LocalDateTime ready, LocalDateTime leaves, LocalDate arrives) {

    public static Journey of(DeliveryWay way, LocalDateTime ready, FreeDays free) {
        LocalDateTime leaves = way.leaves(ready, free);
        return new Journey(way, free, ready, leaves, way.arrives(leaves.toLocalDate(), free));
    }

    /** Why on these days: the hour after which nothing leaves, free days, days on which this way does nothing. */
    public Sentence why() {
        return way.daysOnTheWay() == 0
                ? Sentence.of("planning.journey.same-day", leaving())
                : Sentence.of("planning.journey", leaving(), arriving());
    }

    private Sentence leaving() {
        LocalDate first = ready.toLocalDate();
        LocalDate day = leaves.toLocalDate();
        if (day.equals(first)) {
            return Sentence.of("planning.journey.leaves", day, way.cutOff());
        }
        List<Sentence> causes = new ArrayList<>();
        if (way.leavesOn().contains(first.getDayOfWeek()) && !free.closed().contains(first)) {
            causes.add(Sentence.of("planning.journey.cut-off", first, way.cutOff()));
        }
        List<LocalDate> closed = first.datesUntil(day)
                .filter(free.closed()::contains)
                .filter(one -> way.leavesOn().contains(one.getDayOfWeek()))
                .toList();
        if (closed.size() == 1) {
            causes.add(Sentence.of("planning.journey.free", closed.getFirst()));
        } else if (!closed.isEmpty()) {
            causes.add(Sentence.of("planning.journey.closed", closed.getFirst(), closed.getLast()));
        }
        if (causes.isEmpty()) {
            causes.add(Sentence.of("planning.journey.no-day"));
        }
        Sentence why = causes.size() == 1
                ? causes.getFirst()
                : Sentence.of("planning.journey.both", causes.getFirst(), causes.getLast());
        return Sentence.of("planning.journey.leaves-later", day, why);
    }

    private Sentence arriving() {
        List<LocalDate> not = leaves.toLocalDate()
                .plusDays(1)
                .datesUntil(arrives)
                .filter(day -> !way.delivers(day, free))
                .toList();
        if (not.isEmpty()) {
            return Sentence.of("planning.journey.arrives", way.daysOnTheWay());
        }
        return not.size() == 1
                ? Sentence.of("planning.journey.arrives-without", way.daysOnTheWay(), not.getFirst())
                : Sentence.of("planning.journey.arrives-without-some", way.daysOnTheWay(), not.size());
    }
}
