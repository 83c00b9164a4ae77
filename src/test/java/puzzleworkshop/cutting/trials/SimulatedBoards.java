package puzzleworkshop.cutting.trials;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.BiPredicate;
import java.util.function.Function;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CommonPractice;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.NextTry;
import puzzleworkshop.cutting.settings.SettingState;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.cutting.settings.TrialEvidence;
import puzzleworkshop.cutting.time.CutTimeTest;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;

/**
 * Boards with hidden thresholds and scatter, to see how many tries it takes until their settings are proven. The hidden
 * world is not the one our proposals assume: thresholds are spread evenly rather than bell-shaped, scatter is of
 * another size for every board, and some boards bear more or less charring in several passes than we think.
 */
public final class SimulatedBoards {

    public static final int MOST_TRIES = 40;
    /** True share of good cuts under which a setting was called proven wrongly. */
    public static final double GOOD_ENOUGH = 0.8;

    private static final int CUTS_TO_TELL = 400;
    private final Random random;

    public SimulatedBoards(long seed) {
        this.random = new Random(seed);
    }

    /** Tries per board of every way. */
    public record Tally(
            int[] ours,
            int[] ladder,
            int[] highLadder,
            int[] bound,
            int[] bisection,
            int wrongOurs,
            int wrongBisection) {

        public double meanBisection() {
            return Arrays.stream(bisection).average().orElse(0);
        }

        /** Of a hundred settings called proven so many have less than {@value #GOOD_ENOUGH} good cuts in truth. */
        public double wrongPercentOurs() {
            return 100.0 * wrongOurs / ours.length;
        }

        public double wrongPercentBisection() {
            return 100.0 * wrongBisection / bisection.length;
        }

        public double meanOurs() {
            return Arrays.stream(ours).average().orElse(0);
        }

        public double meanLadder() {
            return Arrays.stream(ladder).average().orElse(0);
        }

        public double meanHighLadder() {
            return Arrays.stream(highLadder).average().orElse(0);
        }

        public double meanBound() {
            return Arrays.stream(bound).average().orElse(0);
        }

        public int medianOurs() {
            return median(ours);
        }

        public int medianLadder() {
            return median(ladder);
        }

        public int worstOurs() {
            return Arrays.stream(ours).max().orElse(0);
        }

        public int worstLadder() {
            return Arrays.stream(ladder).max().orElse(0);
        }

        public long unprovenOurs() {
            return Arrays.stream(ours).filter(n -> n > MOST_TRIES).count();
        }

        public long unprovenLadder() {
            return Arrays.stream(ladder).filter(n -> n > MOST_TRIES).count();
        }

        private static int median(int[] values) {
            int[] sorted = values.clone();
            Arrays.sort(sorted);
            return sorted[sorted.length / 2];
        }
    }

    /** One hidden board. */
    record Board(
            BoardKind kind,
            Machine machine,
            double need,
            double scatter,
            double room,
            double passNeeds,
            double passBears,
            int usualPasses) {

        /** By cutting very often, always with the same dice. */
        double shareOfGood(CutParameters parameters) {
            Random dice = new Random(1);
            int good = 0;
            for (int i = 0; i < CUTS_TO_TELL; i++) {
                good += cut(parameters, dice).isGood() ? 1 : 0;
            }
            return (double) good / CUTS_TO_TELL;
        }

        Finding cut(CutParameters parameters, Random dice) {
            double energy = parameters.lineEnergy(machine.beam());
            int extra = parameters.passes() - usualPasses;
            double over = Math.log(energy / need) - passNeeds * extra + scatter * dice.nextGaussian();
            Result result = over >= 0 ? Result.THROUGH : over > -0.16 ? Result.PARTLY : Result.NOT_THROUGH;
            double heat = (over - passBears * extra) / room;
            int charring = Math.clamp(Math.round(1 + 1.5 * heat + 0.15 * dice.nextGaussian()), 0, 4);
            return Finding.of(result, charring);
        }
    }

    public Tally compare(int boards) {
        int[][] tries = new int[5][boards];
        int wrongOurs = 0;
        int wrongBisection = 0;
        for (int i = 0; i < boards; i++) {
            Board board = next();
            long dice = random.nextLong();
            List<Trial> made = prove(board, new Random(dice), trials -> ours(board, trials), SimulatedBoards::byBelief);
            tries[0][i] = made.isEmpty() ? MOST_TRIES + 1 : made.size();
            wrongOurs += !made.isEmpty() && isWrong(board, chosen(board, made)) ? 1 : 0;
            List<Trial> bisected = prove(board, new Random(dice), bisection(board), SimulatedBoards::byThreeInARow);
            tries[4][i] = bisected.isEmpty() ? MOST_TRIES + 1 : bisected.size();
            wrongBisection +=
                    !bisected.isEmpty() && isWrong(board, bisected.getLast().parameters()) ? 1 : 0;
            tries[1][i] = count(board, new Random(dice), ladder(board, 0.5));
            tries[2][i] = count(board, new Random(dice), ladder(board, 1.0));
            double known = board.need() * Math.exp(Math.min(2.5 * board.scatter(), board.room() / 2));
            tries[3][i] = count(
                    board,
                    new Random(dice),
                    trials -> CommonPractice.dial(board.machine(), known, board.usualPasses(), Length.mm(3)));
        }
        return new Tally(tries[0], tries[1], tries[2], tries[3], tries[4], wrongOurs, wrongBisection);
    }

    Board next() {
        double thickness = List.of(2.0, 3.0, 3.0, 4.0, 5.0, 6.0).get(random.nextInt(6));
        String grade = random.nextInt(3) == 0 ? "CONSTRUCTION" : "CRAFT";
        BoardKind kind = new BoardKind("PLY", grade, Length.mm(thickness));
        Machine machine = CutTimeTest.machine(60, 0.02);
        double usual = CommonPractice.energyFor(kind);
        double need = usual * Math.exp(-0.5 + random.nextDouble());
        return new Board(
                kind,
                machine,
                need,
                0.03 + 0.06 * random.nextDouble(),
                0.25 + 0.35 * random.nextDouble(),
                0.02 + 0.06 * random.nextDouble(),
                0.1 + 0.2 * random.nextDouble(),
                CommonPractice.passesFor(usual));
    }

    static CutParameters ours(Board board, List<Trial> trials) {
        TrialEvidence evidence = new TrialEvidence(board.machine(), board.kind(), trials);
        CutParameters usual = CommonPractice.parametersFor(board.machine(), board.kind());
        return NextTry.after(board.machine(), board.kind(), evidence, evidence.best(usual))
                .orElseThrow()
                .parameters();
    }

    /** Up one rung after every cut that was not good; stays while they are. A charred rung ends the climb: one down. */
    private static Function<List<Trial>, CutParameters> ladder(Board board, double from) {
        double usual = CommonPractice.energyFor(board.kind());
        int passes = board.usualPasses();
        return trials -> {
            double rung = from;
            int most = passes;
            for (Trial trial : trials) {
                if (trial.finding().result() != Result.THROUGH) {
                    rung += 0.1;
                } else if (!trial.finding().isGood()) {
                    rung = Math.max(0.1, rung - 0.1);
                }
            }
            return CommonPractice.dial(board.machine(), usual * rung, most, Length.mm(3));
        };
    }

    /**
     * Plain bisection of the line energy between a half and twice common practice: more when it did not go through, less
     * when it charred, stays while it is good. Where the ends meet, the one that was contradicted gives way by a sixth.
     */
    private static Function<List<Trial>, CutParameters> bisection(Board board) {
        double usual = CommonPractice.energyFor(board.kind());
        return trials -> {
            double low = usual * Math.exp(-0.75);
            double high = usual * Math.exp(0.75);
            double energy = Math.sqrt(low * high);
            for (Trial trial : trials) {
                if (trial.finding().isGood()) {
                    continue;
                }
                boolean through = trial.finding().result() == Result.THROUGH;
                low = through ? low : energy;
                high = through ? energy : high;
                if (high <= low * 1.01) {
                    low = through ? high / 1.18 : low;
                    high = through ? high : low * 1.18;
                }
                energy = Math.sqrt(low * high);
            }
            return CommonPractice.dial(board.machine(), energy, board.usualPasses(), Length.mm(3));
        };
    }

    private static boolean isWrong(Board board, CutParameters proven) {
        return board.shareOfGood(proven) < GOOD_ENOUGH;
    }

    static int count(Board board, Random dice, Function<List<Trial>, CutParameters> way) {
        List<Trial> made = prove(board, dice, way, SimulatedBoards::byThreeInARow);
        return made.isEmpty() ? MOST_TRIES + 1 : made.size();
    }

    /** What would be cut with. */
    private static CutParameters chosen(Board board, List<Trial> trials) {
        return new TrialEvidence(board.machine(), board.kind(), trials)
                .best(CommonPractice.parametersFor(board.machine(), board.kind()));
    }

    /** Our rule: what all trials together make one believe. */
    private static boolean byBelief(Board board, List<Trial> trials) {
        TrialEvidence evidence = new TrialEvidence(board.machine(), board.kind(), trials);
        return evidence.stateOf(chosen(board, trials)) == SettingState.PROVEN;
    }

    /** The plain rule, by which the other ways end: three good ones in a row with the same energy, within 3 %. */
    private static boolean byThreeInARow(Board board, List<Trial> trials) {
        double last = trials.getLast().parameters().lineEnergy(board.machine().beam());
        int row = 0;
        for (Trial trial : trials) {
            double energy = trial.parameters().lineEnergy(board.machine().beam());
            if (Math.abs(energy - last) <= last * TrialEvidence.LIKE_PERCENT / 100) {
                row = trial.finding().isGood() ? row + 1 : 0;
            }
        }
        return row >= TrialEvidence.GOOD_IN_A_ROW;
    }

    /** The trials up to the one that proved the setting; none when it was not proven. */
    private static List<Trial> prove(
            Board board,
            Random dice,
            Function<List<Trial>, CutParameters> way,
            BiPredicate<Board, List<Trial>> isProven) {
        List<Trial> trials = new ArrayList<>();
        while (trials.size() < MOST_TRIES) {
            CutParameters next = way.apply(trials);
            trials.add(trial(trials.size() + 1, next, board.cut(next, dice)));
            if (isProven.test(board, trials)) {
                return trials;
            }
        }
        return List.of();
    }

    public static Trial trial(long id, CutParameters parameters, Finding finding) {
        return new Trial(id, parameters, finding, Source.TRY, "maker", Instant.EPOCH.plusSeconds(id), false);
    }

    public static Finding finding(Result result, int charring, double gap) {
        return new Finding(result, charring, Optional.of(Length.mm(gap)), "");
    }
}
