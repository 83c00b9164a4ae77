package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.planning.schedule.ScheduleJudge;
import puzzleworkshop.planning.schedule.Scheduler;
import puzzleworkshop.planning.schedule.WorkshopWeeks;

/**
 * How long a plan of 60 open orders takes, against the plain earliest due date sequence, and how often the search finds
 * the sequence whose lateness costs least in small weeks of five to nine orders, judged by branch and bound over all of
 * them; {@code worst_gap_percent} is by how much its dearest miss costs more. The weeks are our own, so a folder changes
 * nothing.
 */
public final class ScheduleBenchmark implements Benchmark {

    private static final int ORDERS = 60;
    private static final int CASES = 400;

    @Override
    public String run(Optional<Path> folder, PrintStream out) {
        WorkingCalendar calendar = WorkshopWeeks.twoPeople();
        out.println("week  orders  cost by due date      cost  late by due date  late  set-ups  seconds");
        double worst = 0;
        for (int week = 0; week < 9; week++) {
            List<Job> jobs = week < 6
                    ? WorkshopWeeks.random(ORDERS, week)
                    : ScheduleJudge.tight(ORDERS, week).stream()
                            .map(job -> job.dueBy(job.due().plusDays(job.id() % 3 * 7)))
                            .toList();
            double seconds = Double.MAX_VALUE;
            Schedule plan = null;
            for (int i = 0; i < 3; i++) {
                long begin = System.nanoTime();
                plan = Scheduler.usual().plan(calendar, jobs, WorkshopWeeks.MONDAY);
                seconds = Math.min(seconds, (System.nanoTime() - begin) / 1e9);
            }
            Schedule byDue = ScheduleJudge.byDueDate(calendar, jobs, WorkshopWeeks.MONDAY);
            out.printf(
                    Locale.ROOT,
                    "%4d  %6d  %16.1f  %8.1f  %16d  %4d  %7d  %7.3f%n",
                    week,
                    ORDERS,
                    byDue.cost(),
                    plan.cost(),
                    byDue.late(),
                    plan.late(),
                    plan.setUps(),
                    seconds);
            worst = Math.max(worst, seconds);
        }
        int optimal = 0;
        int byDueOptimal = 0;
        int withLateness = 0;
        double worstGap = 0;
        for (int seed = 0; seed < CASES; seed++) {
            int orders = seed % 20 == 0 ? 9 : seed % 8 == 1 ? 8 : 5 + seed % 3;
            List<Job> jobs = ScheduleJudge.tight(orders, seed);
            double best = ScheduleJudge.leastCost(calendar, jobs, WorkshopWeeks.MONDAY);
            double ours =
                    Scheduler.usual().plan(calendar, jobs, WorkshopWeeks.MONDAY).cost();
            double byDue = ScheduleJudge.byDueDate(calendar, jobs, WorkshopWeeks.MONDAY)
                    .cost();
            withLateness += best > 0 ? 1 : 0;
            optimal += ours <= best + 1e-6 ? 1 : 0;
            byDueOptimal += byDue <= best + 1e-6 ? 1 : 0;
            // Where nothing need be late any lateness is counted as all of its own cost.
            worstGap = Math.max(worstGap, best > 0 ? 100 * (ours - best) / best : ours > 1e-6 ? 100 : 0);
        }
        out.printf(
                Locale.ROOT,
                "small weeks of 5 to 9 orders, %d of them with unavoidable lateness: cheapest sequence found in %d of %d"
                        + " (earliest due date alone: %d)%n",
                withLateness,
                optimal,
                CASES,
                byDueOptimal);
        return String.format(
                Locale.ROOT,
                "orders=%d seconds=%.3f optimal_percent=%.2f worst_gap_percent=%.2f cases=%d",
                ORDERS,
                worst,
                100.0 * optimal / CASES,
                Math.max(0, worstGap),
                CASES);
    }
}
