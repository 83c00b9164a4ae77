package puzzleworkshop.cutfiles.writing;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.cutfiles.writing.GcodeInterpreter.Event;
import puzzleworkshop.cutfiles.writing.GcodeInterpreter.Move;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.machines.Motion;

/**
 * How long a machine takes over interpreted moves: squares of the speed on a fine ruler along each run, kept below what
 * feed, corners and acceleration allow, one sweep backwards and one forwards, and the time summed up step by step. Its own
 * method, to judge the estimate by. Runs with the beam begin and end at rest; the way to the first line does not count.
 */
final class GcodeClock {

    private static final double STEP_MM = 0.02;

    private GcodeClock() {}

    static double seconds(GcodeInterpreter run, Motion motion) {
        double sum = 0;
        List<Move> chain = new ArrayList<>();
        boolean begun = false;
        for (Event event : run.events()) {
            switch (event) {
                case Event.Dwelt dwelt -> sum += dwelt.seconds();
                case Event.Moved moved -> {
                    Move move = moved.move();
                    if (move.rapid()) {
                        sum += over(chain, motion);
                        chain.clear();
                        if (begun) {
                            sum += over(List.of(move), motion);
                        }
                        begun = true;
                    } else {
                        chain.add(move);
                    }
                }
            }
        }
        return sum + over(chain, motion);
    }

    private static double over(List<Move> chain, Motion motion) {
        int points = 1;
        for (Move move : chain) {
            points += steps(move);
        }
        double[] most = new double[points];
        double[] step = new double[points];
        int at = 0;
        for (int i = 0; i < chain.size(); i++) {
            Move move = chain.get(i);
            double top = move.rapid() ? motion.maxTravel().mmPerSecond() : move.feed() / 60;
            int n = steps(move);
            for (int k = 1; k <= n; k++) {
                most[at + k] = top * top;
                step[at + k] = move.length() / n;
            }
            if (i > 0) {
                double corner = motion.cornerSpeed(turn(chain.get(i - 1), move));
                most[at] = Math.min(most[at], Math.min(top * top, corner * corner));
            }
            at += n;
        }
        if (at == 0) {
            return 0;
        }
        most[0] = 0;
        most[at] = 0;
        double a = motion.acceleration();
        for (int i = at - 1; i >= 0; i--) {
            most[i] = Math.min(most[i], most[i + 1] + 2 * a * step[i + 1]);
        }
        double seconds = 0;
        for (int i = 1; i <= at; i++) {
            most[i] = Math.min(most[i], most[i - 1] + 2 * a * step[i]);
            double sum = Math.sqrt(most[i]) + Math.sqrt(most[i - 1]);
            // from rest to rest within one step: a triangle
            seconds += sum > 0 ? 2 * step[i] / sum : 2 * Math.sqrt(step[i] / a);
        }
        return seconds;
    }

    private static int steps(Move move) {
        return move.length() == 0 ? 0 : (int) Math.max(4, Math.ceil(move.length() / STEP_MM));
    }

    private static double turn(Move before, Move after) {
        double[] p = way(before.from(), before.to());
        double[] q = way(after.from(), after.to());
        return Math.abs(Math.atan2(p[0] * q[1] - p[1] * q[0], p[0] * q[0] + p[1] * q[1]));
    }

    private static double[] way(Point from, Point to) {
        return new double[] {to.xMm() - from.xMm(), to.yMm() - from.yMm()};
    }
}
