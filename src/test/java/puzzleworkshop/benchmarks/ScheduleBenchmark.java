package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.planning.schedule.Batching;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.planning.schedule.ScheduleJudge;
import puzzleworkshop.planning.schedule.Scheduler;
import puzzleworkshop.planning.schedule.WorkshopWeeks;

/**
 * How long a plan of 60 open orders takes, against the plain earliest due date sequence, and how often the search finds
 * the best sequence of small weeks, judged by trying all of them. The weeks are our own, so a folder changes nothing.
 */
public final class ScheduleBenchmark implements Benchmark {

    private static final int ORDERS = 60;
    private static final int CASES = 200;

    @Override
    public String run(Optional<Path> folder, PrintStream out) {
        out.println("week  orders  late by due date  late  hours late by due date  hours late  set-ups  seconds");
        double worst = 0;
        for (int week = 0; week < 6; week++) {
            List<Job> jobs = WorkshopWeeks.random(ORDERS, week);
            double seconds = Double.MAX_VALUE;
            Schedule plan = null;
            for (int i = 0; i < 3; i++) {
                long begin = System.nanoTime();
                plan = Scheduler.usual().plan(WorkshopWeeks.twoPeople(), jobs, WorkshopWeeks.MONDAY);
                seconds = Math.min(seconds, (System.nanoTime() - begin) / 1e9);
            }
            Schedule byDue = ScheduleJudge.byDueDate(WorkshopWeeks.twoPeople(), jobs, WorkshopWeeks.MONDAY);
            out.printf(
                    "%4d  %6d  %16d  %4d  %22.0f  %10.0f  %7d  %7.3f%n",
                    week,
                    ORDERS,
                    byDue.late(),
                    plan.late(),
                    byDue.lateMinutes() / 60.0,
                    plan.lateMinutes() / 60.0,
                    plan.setUps(),
                    seconds);
            worst = Math.max(worst, seconds);
        }
        int optimal = 0;
        int byDueOptimal = 0;
        for (int seed = 0; seed < CASES; seed++) {
            List<Job> jobs = ScheduleJudge.tight(7, seed);
            Scheduler scheduler = new Scheduler(400, 240, Batching.USUAL);
            int best = ScheduleJudge.fewestLate(WorkshopWeeks.twoPeople(), jobs, WorkshopWeeks.MONDAY);
            optimal += scheduler
                                    .plan(WorkshopWeeks.twoPeople(), jobs, WorkshopWeeks.MONDAY)
                                    .late()
                            == best
                    ? 1
                    : 0;
            byDueOptimal += ScheduleJudge.byDueDate(WorkshopWeeks.twoPeople(), jobs, WorkshopWeeks.MONDAY)
                                    .late()
                            == best
                    ? 1
                    : 0;
        }
        out.printf(
                "small weeks of 7 orders, all 5,040 sequences tried: fewest late in %d of %d (earliest due date alone: %d)%n",
                optimal, CASES, byDueOptimal);
        return "orders=%d seconds=%.3f optimal_percent=%.1f cases=%d"
                .formatted(ORDERS, worst, 100.0 * optimal / CASES, CASES);
    }
}
