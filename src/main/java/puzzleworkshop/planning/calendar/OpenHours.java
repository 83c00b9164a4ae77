package puzzleworkshop.planning.calendar;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import puzzleworkshop.measure.Refused;

/**
 * Hours in an ordinary week, per weekday in ascending spans that do not overlap. A weekday that is not named is free.
 */
public record OpenHours(Map<DayOfWeek, List<Span>> byDay) {

    private static final Pattern SPAN =
            Pattern.compile("\\s*(\\d{1,2})[:.](\\d{2})\\s*[-–]\\s*(\\d{1,2})[:.](\\d{2})\\s*");
    public static final OpenHours NONE = new OpenHours(Map.of());

    /**
     * @param from in minutes after midnight
     * @param to in minutes after midnight, up to 1440 for midnight at the end of the day, after {@code from}
     */
    public record Span(int from, int to) {

        public Span {
            if (from < 0 || to > 1440 || from >= to) {
                throw new IllegalArgumentException("Hours must run forward within one day: " + from + " to " + to);
            }
        }

        public static Span of(LocalTime from, LocalTime to) {
            return new Span(from.toSecondOfDay() / 60, to.equals(LocalTime.MIDNIGHT) ? 1440 : to.toSecondOfDay() / 60);
        }

        public int minutes() {
            return to - from;
        }

        @Override
        public String toString() {
            return "%02d:%02d–%02d:%02d".formatted(from / 60, from % 60, to / 60, to % 60);
        }
    }

    public OpenHours {
        Map<DayOfWeek, List<Span>> copy = new EnumMap<>(DayOfWeek.class);
        byDay.forEach((day, spans) -> {
            for (int i = 1; i < spans.size(); i++) {
                if (spans.get(i).from() < spans.get(i - 1).to()) {
                    throw new IllegalArgumentException("Hours overlap on " + day);
                }
            }
            if (!spans.isEmpty()) {
                copy.put(day, List.copyOf(spans));
            }
        });
        byDay = Map.copyOf(copy);
    }

    /** The same hours from Monday to Friday. */
    public static OpenHours weekdays(Span... spans) {
        Map<DayOfWeek, List<Span>> week = new EnumMap<>(DayOfWeek.class);
        for (DayOfWeek day : DayOfWeek.values()) {
            if (day.getValue() <= 5) {
                week.put(day, List.of(spans));
            }
        }
        return new OpenHours(week);
    }

    public List<Span> on(DayOfWeek day) {
        return byDay.getOrDefault(day, List.of());
    }

    /** In an ordinary week. */
    public int minutesAWeek() {
        return byDay.values().stream()
                .flatMap(List::stream)
                .mapToInt(Span::minutes)
                .sum();
    }

    /** As people write it: {@code 08:00–12:00, 13:00–17:00}; empty on a free day. */
    public String written(DayOfWeek day) {
        return on(day).stream().map(Span::toString).collect(Collectors.joining(", "));
    }

    /**
     * Reads what people write, {@code 8:00-12:00, 13:00-17:00}.
     *
     * @throws Refused when it is no list of hours, or they overlap or run backwards
     */
    public static List<Span> read(String written) {
        List<Span> spans = new ArrayList<>();
        if (written == null || written.isBlank()) {
            return spans;
        }
        for (String part : written.split("[,;]")) {
            Matcher found = SPAN.matcher(part);
            if (!found.matches()) {
                throw new Refused("planning.hours.unreadable", part.trim());
            }
            try {
                Span span = new Span(minutes(found.group(1), found.group(2)), minutes(found.group(3), found.group(4)));
                if (!spans.isEmpty() && spans.getLast().to() > span.from()) {
                    throw new Refused("planning.hours.overlap", part.trim());
                }
                spans.add(span);
            } catch (IllegalArgumentException | DateTimeException backwards) {
                throw new Refused("planning.hours.backwards", part.trim());
            }
        }
        return spans;
    }

    private static int minutes(String hours, String minutes) {
        if (Integer.parseInt(minutes) > 59) {
            throw new DateTimeException("minutes");
        }
        return Integer.parseInt(hours) * 60 + Integer.parseInt(minutes);
    }
}
