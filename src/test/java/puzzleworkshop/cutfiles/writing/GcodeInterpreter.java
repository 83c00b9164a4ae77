package puzzleworkshop.cutfiles.writing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import puzzleworkshop.geometry.Point;

/**
 * Runs G-code as the standard says, sharing nothing with what writes it: blocks of words, modal groups and the order of
 * execution within a block of Kramer, Proctor and Messina, The NIST RS274NGC Interpreter, Version 3, NISTIR 6556 (2000),
 * tables 4, 5, 7 and 8 (from memory of them): feed rate, spindle speed, spindle on or off, coolant, dwell, plane, units,
 * distance mode, motion, stop. What a file for a laser has no use for is refused, so that nothing passes unread.
 */
public final class GcodeInterpreter {

    /** One straight move. */
    public record Move(Point from, Point to, boolean rapid, double power, boolean dynamic, double feed, boolean air) {

        public boolean beamOn() {
            return power > 0;
        }

        public double length() {
            return from.distanceTo(to);
        }
    }

    /** A move, or a wait of so many seconds with the beam as it is. */
    public sealed interface Event {
        record Moved(Move move) implements Event {}

        record Dwelt(double seconds, double power) implements Event {}
    }

    private static final Pattern WORD = Pattern.compile("([A-Z])\\s*([+-]?(?:\\d+\\.?\\d*|\\.\\d+))");

    private final List<Event> events = new ArrayList<>();
    private double x;
    private double y;
    private double feed = Double.NaN;
    private double speed;
    private int spindle = 5;
    private boolean air;
    private double unit = 1;
    private boolean absolute = true;
    private int motion = -1;
    private boolean ended;
    private boolean perMinute;

    public static GcodeInterpreter run(String text) {
        GcodeInterpreter machine = new GcodeInterpreter();
        int number = 0;
        for (String line : text.split("\\R")) {
            number++;
            machine.block(line, number);
        }
        if (!machine.ended) {
            throw new IllegalStateException("The program does not end");
        }
        return machine;
    }

    public List<Event> events() {
        return events;
    }

    public List<Move> moves() {
        return events.stream()
                .filter(Event.Moved.class::isInstance)
                .map(e -> ((Event.Moved) e).move())
                .toList();
    }

    public boolean beamReadyAtEnd() {
        return spindle != 5 || speed > 0 || air;
    }

    private void block(String line, int number) {
        String code = line.replaceAll("\\([^()]*\\)", " ").toUpperCase(Locale.ROOT);
        if (code.contains("(") || code.contains(")")) {
            throw fault(number, "a bracket is left open");
        }
        if (code.isBlank()) {
            return;
        }
        if (ended) {
            throw fault(number, "something follows the end");
        }
        List<Integer> g = new ArrayList<>();
        List<Integer> m = new ArrayList<>();
        Double nextX = null;
        Double nextY = null;
        Double p = null;
        Matcher words = WORD.matcher(code);
        int read = 0;
        StringBuilder rest = new StringBuilder();
        while (words.find()) {
            rest.append(code, read, words.start());
            read = words.end();
            double value = Double.parseDouble(words.group(2));
            switch (words.group(1).charAt(0)) {
                case 'G' -> g.add(whole(value, number));
                case 'M' -> m.add(whole(value, number));
                case 'X' -> nextX = value;
                case 'Y' -> nextY = value;
                case 'F' -> feed = value;
                case 'S' -> speed = value;
                case 'P' -> p = value;
                case 'N' -> {}
                default -> throw fault(number, "an unknown word " + words.group());
            }
        }
        rest.append(code.substring(read));
        if (!rest.toString().isBlank()) {
            throw fault(number, "'" + rest.toString().strip() + "' is no word");
        }
        for (int word : m) {
            switch (word) {
                case 3, 4, 5 -> spindle = word;
                case 7, 8 -> air = true;
                case 9 -> air = false;
                case 2, 30 -> ended = true;
                default -> throw fault(number, "M" + word + " is not for this");
            }
        }
        boolean dwell = false;
        for (int word : g) {
            switch (word) {
                case 0, 1 -> motion = word;
                case 4 -> dwell = true;
                case 17 -> {}
                case 20 -> unit = 25.4;
                case 21 -> unit = 1;
                case 90 -> absolute = true;
                case 91 -> absolute = false;
                case 94 -> perMinute = true;
                default -> throw fault(number, "G" + word + " is not for this");
            }
        }
        if (dwell) {
            if (p == null || p < 0) {
                throw fault(number, "a dwell without its time");
            }
            events.add(new Event.Dwelt(p, power()));
        }
        if (nextX != null || nextY != null) {
            move(nextX, nextY, number);
        }
    }

    private void move(Double nextX, Double nextY, int number) {
        if (motion < 0) {
            throw fault(number, "a place without G0 or G1");
        }
        if (motion == 1 && (!perMinute || !(feed > 0))) {
            throw fault(number, "a cut without a feed in units per minute");
        }
        Point from = Point.of(x, y);
        x = nextX == null ? x : absolute ? nextX * unit : x + nextX * unit;
        y = nextY == null ? y : absolute ? nextY * unit : y + nextY * unit;
        events.add(
                new Event.Moved(new Move(from, Point.of(x, y), motion == 0, power(), spindle == 4, feed * unit, air)));
    }

    private double power() {
        return spindle == 5 ? 0 : speed;
    }

    private static int whole(double value, int number) {
        if (value != Math.rint(value)) {
            throw fault(number, "a code with a fraction");
        }
        return (int) value;
    }

    private static IllegalStateException fault(int number, String what) {
        return new IllegalStateException("Line " + number + ": " + what);
    }
}
