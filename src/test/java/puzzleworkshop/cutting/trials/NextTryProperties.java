package puzzleworkshop.cutting.trials;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CommonPractice;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.NextTry;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.TrialEvidence;
import puzzleworkshop.cutting.time.CutTimeTest;
import puzzleworkshop.machines.Beam;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.measure.Speed;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class NextTryProperties {

    @Test
    void stays_within_the_machine_and_within_reason_whatever_was_tried() {
        long seed = Seeds.from(20261125);
        Random random = new Random(seed);
        for (int i = 0; i < 300; i++) {
            Machine machine = machine(random);
            BoardKind board = new BoardKind(
                    "BIRCH", random.nextBoolean() ? "CRAFT" : "CONSTRUCTION", Length.mm(1 + random.nextInt(9)));
            List<Trial> trials = new ArrayList<>();
            for (int n = random.nextInt(7); n > 0; n--) {
                trials.add(SimulatedBoards.trial(n, parameters(machine, board, random), finding(random)));
            }
            TrialEvidence evidence = new TrialEvidence(machine, board, trials);
            CutParameters usual = CommonPractice.parametersFor(machine, board);
            Optional<NextTry> next = NextTry.after(machine, board, evidence, evidence.best(usual));
            if (next.isEmpty()) {
                continue;
            }
            CutParameters p = next.get().parameters();
            String where = "seed " + seed + ", case " + i + ": " + p + " after " + trials;
            assertThat(p.speed()).as(where).isLessThanOrEqualTo(machine.motion().maxCut());
            assertThat(p.power().asDouble()).as(where).isBetween(0.001, 1.0);
            assertThat(p.gap()).as(where).isEqualTo(machine.beam().lensGap());
            assertThat(next.get().lineEnergy())
                    .as(where)
                    .isBetween(
                            CommonPractice.energyFor(board) / 6,
                            Math.max(CommonPractice.energyFor(board) * 6, strongest(trials, machine) * 1.02));
        }
    }

    @Test
    void the_same_trials_give_the_same_proposal() {
        Random random = new Random(Seeds.from(5));
        Machine machine = machine(random);
        BoardKind board = new BoardKind("POPLAR", "CRAFT", Length.mm(4));
        List<Trial> trials = List.of(SimulatedBoards.trial(1, parameters(machine, board, random), finding(random)));
        TrialEvidence evidence = new TrialEvidence(machine, board, trials);
        CutParameters usual = CommonPractice.parametersFor(machine, board);
        assertThat(NextTry.after(machine, board, evidence, usual))
                .isEqualTo(NextTry.after(machine, board, evidence, usual));
    }

    @Test
    void comes_to_proven_settings_on_every_simulated_board_in_fewer_tries_than_a_ladder() {
        SimulatedBoards.Tally tally = new SimulatedBoards(42).compare(80);
        assertThat(tally.unprovenOurs()).isZero();
        assertThat(tally.meanOurs()).isLessThan(0.5 * tally.meanLadder());
        // 80 boards are few; the benchmark measures the better ladder on 600
        assertThat(tally.meanOurs()).isLessThan(0.85 * tally.meanHighLadder());
    }

    /** What the issue asks for, on other boards than the benchmark's: a seventh fewer tries, half as often wrong. */
    @Test
    @Tag("slow")
    void needs_fewer_tries_than_bisection_and_is_half_as_often_wrong_when_it_says_proven() {
        SimulatedBoards.Tally tally = new SimulatedBoards(Seeds.from(20261130)).compare(300);
        assertThat(tally.meanOurs()).isLessThan(0.85 * tally.meanBisection());
        assertThat(tally.wrongPercentOurs()).isLessThanOrEqualTo(0.5 * tally.wrongPercentBisection());
    }

    /** After one that held and one that charred, whatever order they came in, the next lies between them. */
    @Test
    void lies_between_what_did_not_go_through_and_what_charred() {
        long seed = Seeds.from(20261129);
        Random random = new Random(seed);
        for (int i = 0; i < 200; i++) {
            Machine machine = CutTimeTest.machine(60, 0.02);
            BoardKind board = new BoardKind("BIRCH", "CRAFT", Length.mm(2 + random.nextInt(3)));
            double low = CommonPractice.energyFor(board) * Math.exp(random.nextDouble() - 0.6);
            double high = low * (1.25 + 0.5 * random.nextDouble());
            int passes = CommonPractice.passesFor(CommonPractice.energyFor(board));
            List<Trial> trials = new ArrayList<>(List.of(
                    SimulatedBoards.trial(1, dial(machine, low, passes), Finding.of(Result.NOT_THROUGH, 0)),
                    SimulatedBoards.trial(2, dial(machine, high, passes), Finding.of(Result.THROUGH, 4))));
            TrialEvidence evidence = new TrialEvidence(machine, board, trials);
            NextTry next = NextTry.after(machine, board, evidence, dial(machine, low, passes))
                    .orElseThrow();
            if (next.parameters().passes() == passes) {
                assertThat(next.lineEnergy())
                        .as("seed %d, case %d: %s", seed, i, trials)
                        .isBetween(low * 0.99, high * 1.01);
            }
        }
    }

    private static CutParameters dial(Machine machine, double energy, int passes) {
        return CommonPractice.dial(machine, energy, passes, machine.beam().lensGap());
    }

    private static double strongest(List<Trial> trials, Machine machine) {
        return trials.stream()
                .mapToDouble(trial -> trial.parameters().lineEnergy(machine.beam()))
                .max()
                .orElse(0);
    }

    private static Machine machine(Random random) {
        Machine usual = CutTimeTest.machine(10 + random.nextInt(60), 0.02);
        return new Machine(
                1,
                "M",
                Size.mm(400, 400),
                new Beam(5 + random.nextInt(40), 450, Length.mm(2 + random.nextInt(5)), Length.mm(0.15)),
                usual.motion(),
                usual.bowLimit(),
                usual.setUp(),
                usual.passPause(),
                usual.costs(),
                false,
                false);
    }

    private static CutParameters parameters(Machine machine, BoardKind board, Random random) {
        double energy = CommonPractice.energyFor(board) * Math.exp(random.nextGaussian() * 0.4);
        CutParameters dialled = CommonPractice.dial(
                machine, energy, 1 + random.nextInt(3), machine.beam().lensGap());
        return new CutParameters(
                Speed.mmPerSecond(dialled.speed().mmPerSecond()),
                Percent.of(60 + random.nextInt(41)),
                dialled.passes(),
                random.nextInt(6) > 0,
                machine.beam().lensGap());
    }

    private static Finding finding(Random random) {
        Result result = Result.values()[random.nextInt(3)];
        return random.nextInt(4) == 0
                ? SimulatedBoards.finding(result, random.nextInt(5), random.nextDouble() * 8)
                : Finding.of(result, random.nextInt(5));
    }
}
