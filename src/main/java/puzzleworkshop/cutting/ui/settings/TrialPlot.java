package puzzleworkshop.cutting.ui.settings;

import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.NextTry;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.TrialEvidence;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;

/**
 * All trials of a setting as one picture: line energy to the right; upwards how the cut came out, from 'not through'
 * over 'partly' to 'through' with its charring. What is dialled in now and what to try next stand as lines.
 */
class TrialPlot extends SvgBox {

    private static final double WIDTH = 420;
    private static final double LEFT = 106;
    private static final double RIGHT = 12;
    private static final double TOP = 34;
    private static final double LANE = 26;
    private static final int LANES = 7;
    private static final double BOTTOM = TOP + LANES * LANE;
    private static final double HEIGHT = BOTTOM + 40;

    private final transient Formatter figures;
    private double from;
    private double to;

    TrialPlot(Formatter figures) {
        super("cutting-plot");
        this.figures = figures;
    }

    TrialPlot show(CutSetting setting, TrialEvidence evidence, Optional<NextTry> next) {
        List<Trial> trials = evidence.trials();
        scale(DoubleStream.concat(
                        trials.stream().mapToDouble(trial -> trial.parameters().lineEnergy(evidence.beam())),
                        DoubleStream.concat(
                                DoubleStream.of(setting.lineEnergy()),
                                next.stream().mapToDouble(NextTry::lineEnergy)))
                .toArray());
        Svg svg = Svg.of(0, 0, WIDTH, HEIGHT, figures.text("cutting.plot.title"), words(setting, evidence));
        lanes(svg);
        axis(svg);
        double now = x(setting.lineEnergy());
        svg.line(now, TOP - 4, now, BOTTOM, "cutting-plot-now");
        next.ifPresent(proposal -> {
            double at = x(proposal.lineEnergy());
            svg.line(at, TOP - 4, at, BOTTOM, "cutting-plot-next");
            svg.text(
                    Math.clamp(at, LEFT + 30, WIDTH - 40),
                    TOP - 22,
                    13,
                    "middle",
                    figures.text("cutting.plot.next", proposal.lineEnergy()),
                    "cutting-plot-next-text");
        });
        svg.text(
                Math.clamp(now, LEFT + 20, WIDTH - 30),
                TOP - 8,
                12,
                "middle",
                figures.text("cutting.plot.now"),
                "cutting-plot-now-text");
        for (int i = 0; i < trials.size(); i++) {
            mark(svg, trials.get(i), evidence, i);
        }
        draw(svg);
        return this;
    }

    private String words(CutSetting setting, TrialEvidence evidence) {
        long good = evidence.trials().stream()
                .filter(trial -> trial.finding().isGood())
                .count();
        return figures.text("cutting.plot.words", evidence.trials().size(), good, setting.lineEnergy());
    }

    private void lanes(Svg svg) {
        for (int lane = 0; lane < LANES; lane++) {
            double y = BOTTOM - (lane + 1) * LANE;
            boolean fine = lane >= 2 && lane <= 2 + Finding.ACCEPTABLE_CHARRING;
            svg.rect(
                    LEFT,
                    y + 1,
                    WIDTH - LEFT - RIGHT,
                    LANE - 2,
                    fine ? "cutting-lane cutting-lane-good" : "cutting-lane");
            String key = switch (lane) {
                case 0 -> "cutting.result.NOT_THROUGH";
                case 1 -> "cutting.result.PARTLY";
                default -> "cutting.plot.lane." + (lane - 2);
            };
            svg.text(LEFT - 8, y + LANE / 2 + 4, 13, "end", figures.text(key), "cutting-plot-label");
        }
    }

    private void axis(Svg svg) {
        double step = (to - from) > 12 ? 4 : (to - from) > 6 ? 2 : (to - from) > 3 ? 1 : 0.5;
        for (double e = Math.ceil(from / step) * step; e <= to + 1e-9; e += step) {
            svg.line(x(e), BOTTOM, x(e), BOTTOM + 4, "cutting-plot-tick");
            svg.text(x(e), BOTTOM + 18, 13, "middle", figures.number(e, 1), "cutting-plot-label");
        }
        svg.text(WIDTH - RIGHT, BOTTOM + 36, 13, "end", figures.text("cutting.plot.axis"), "cutting-plot-label");
    }

    private void mark(Svg svg, Trial trial, TrialEvidence evidence, int index) {
        int lane = switch (trial.finding().result()) {
            case NOT_THROUGH -> 0;
            case PARTLY -> 1;
            case THROUGH -> 2 + trial.finding().charring();
        };
        double x = x(trial.parameters().lineEnergy(evidence.beam()));
        // trials with the same energy and outcome stand side by side, not on each other
        double y = BOTTOM - (lane + 0.5) * LANE + (index % 3 - 1) * 7;
        String look = trial.finding().isGood() ? "good" : trial.finding().result() == Result.THROUGH ? "warn" : "bad";
        String wrongGap = trial.gapWasRight() ? "" : " cutting-mark-hollow";
        String shape = switch (trial.finding().result()) {
            case THROUGH -> circle(x, y, 4.5);
            case PARTLY -> "M" + Svg.n(x - 5.5) + " " + Svg.n(y + 4.5) + "h11l-5.5 -10z";
            case NOT_THROUGH -> "M" + Svg.n(x - 4.5) + " " + Svg.n(y - 4.5) + "l9 9m0 -9l-9 9";
        };
        svg.raw("<g class='cutting-mark'><title>"
                + Svg.escape(figures.text(
                        "cutting.plot.mark",
                        index + 1,
                        trial.parameters().lineEnergy(evidence.beam()),
                        figures.text(trial.finding().result().textKey()),
                        trial.finding().charring()))
                + "</title>");
        svg.path(shape, "cutting-mark-" + look + wrongGap);
        svg.raw("</g>");
    }

    private static String circle(double x, double y, double r) {
        return "M" + Svg.n(x - r) + " " + Svg.n(y) + "a" + r + " " + r + " 0 1 0 " + 2 * r + " 0a" + r + " " + r
                + " 0 1 0 " + -2 * r + " 0";
    }

    private void scale(double[] energies) {
        double least = DoubleStream.of(energies).min().orElse(0);
        double most = DoubleStream.of(energies).max().orElse(1);
        double room = Math.max(0.5, (most - least) * 0.15);
        from = Math.max(0, least - room);
        to = most + room;
    }

    private double x(double energy) {
        return LEFT + 6 + (energy - from) / (to - from) * (WIDTH - LEFT - RIGHT - 12);
    }
}
