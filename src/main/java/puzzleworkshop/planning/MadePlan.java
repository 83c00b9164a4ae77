package puzzleworkshop.planning;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.planning.WeekPlan.Standing;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.planning.schedule.OverloadAdvice;
import puzzleworkshop.planning.schedule.PromiseDate;
import puzzleworkshop.planning.schedule.Scheduler;

/** One plan with all it was made from, so that what depends on it is worked out from the very same; the dear parts once. */
final class MadePlan {

    final LocalDateTime at;
    final WorkingCalendar calendar;
    final List<Job> jobs;
    final Scheduler scheduler;
    final WorkOfOrders work;
    final Standing standing;
    private Optional<OverloadAdvice> relief;
    private PromiseDate promise;

    MadePlan(
            LocalDateTime at,
            WorkingCalendar calendar,
            List<Job> jobs,
            Scheduler scheduler,
            WorkOfOrders work,
            Standing standing) {
        this.at = at;
        this.calendar = calendar;
        this.jobs = jobs;
        this.scheduler = scheduler;
        this.work = work;
        this.standing = standing;
    }

    /** What gives, if something must; takes up to about a second. */
    synchronized Optional<OverloadAdvice> relief() {
        if (relief == null) {
            relief = OverloadAdvice.of(scheduler, calendar, jobs, at, standing.plan());
        }
        return relief;
    }

    synchronized PromiseDate promise() {
        if (promise == null) {
            promise = new PromiseDate(calendar, jobs, at, scheduler);
        }
        return promise;
    }

    /** The same without one job, if it has it. */
    PromiseDate promiseWithout(long job) {
        List<Job> others = jobs.stream().filter(each -> each.id() != job).toList();
        return others.size() == jobs.size() ? promise() : new PromiseDate(calendar, others, at, scheduler);
    }
}
