package puzzleworkshop.planning.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import puzzleworkshop.planning.schedule.OneMachine.Work;
import puzzleworkshop.planning.schedule.SchedulingProblem.Operation;
import puzzleworkshop.workshop.Stage;

/**
 * The narrow place of a shop: of laser, hands and printer the one on which the work that is due by some day exceeds its
 * open time until then by most (or falls short of it by least). That is the maximum lateness of the earliest due date
 * sequence on this resource alone, counted in its own open minutes.
 *
 * @param resource the narrow one
 * @param until the minute by which the work is due
 * @param needed minutes asked for until then
 * @param available minutes open until then
 */
record Bottleneck(Stage.Resource resource, int until, int needed, int available) {

    static Bottleneck of(SchedulingProblem shop) {
        Bottleneck narrow = null;
        for (Stage.Resource resource : List.of(Stage.Resource.LASER, Stage.Resource.HANDS, Stage.Resource.PRINTER)) {
            Bottleneck other = of(shop, resource);
            if (narrow == null || other.shortOf() > narrow.shortOf()) {
                narrow = other;
            }
        }
        return narrow;
    }

    static Bottleneck of(SchedulingProblem shop, Stage.Resource resource) {
        List<Work> works =
                works(shop, resource, IntStream.range(0, shop.jobs.size()).toArray());
        Bottleneck worst = null;
        long needed = 0;
        for (Work work : OneMachine.earliestDueFirst(works)) {
            needed += work.time();
            // What is past its date already is short whatever the capacity; it says nothing about a narrow place.
            int available = (int) Math.max(0, work.due());
            Bottleneck here = new Bottleneck(resource, shop.due[(int) work.id()], (int) needed, available);
            if (available > 0 && work.time() > 0 && (worst == null || here.shortOf() > worst.shortOf())) {
                worst = here;
            }
        }
        int end = IntStream.of(shop.due).max().orElse(shop.now);
        return worst != null ? worst : new Bottleneck(resource, end, (int) needed, open(shop, resource, end));
    }

    /** Minutes missing; negative when there is time to spare. */
    int shortOf() {
        return needed - available;
    }

    /**
     * The jobs as work of one resource alone: their minutes on it, and what is open of it before what follows must
     * begin. Several people count as one machine that is open as long as all of them together.
     */
    static List<Work> works(SchedulingProblem shop, Stage.Resource resource, int[] jobs) {
        List<Work> works = new ArrayList<>();
        for (int j : jobs) {
            int[] route = shop.route[j];
            int last = route.length - 1;
            while (last >= 0 && on(shop.operations.get(route[last]), resource) == 0) {
                last--;
            }
            int deadline = last < 0 ? shop.due[j] : shop.due[j] - shop.after(j)[last];
            int due = deadline < shop.now ? deadline - shop.now : open(shop, resource, deadline);
            works.add(new Work(j, minutes(shop, j, resource), due));
        }
        return works;
    }

    static int minutes(SchedulingProblem shop, int job, Stage.Resource resource) {
        int sum = 0;
        for (int o : shop.route[job]) {
            Operation operation = shop.operations.get(o);
            sum += on(operation, resource) / operation.members.size();
        }
        return sum;
    }

    static int on(Operation operation, Stage.Resource resource) {
        if (resource == Stage.Resource.HANDS) {
            return operation.machine() < 0 ? operation.setUp + operation.work : operation.hands();
        }
        return operation.stage.resource() == resource ? operation.setUp + operation.work : 0;
    }

    static int open(SchedulingProblem shop, Stage.Resource resource, int until) {
        return switch (resource) {
            case LASER -> shop.open[SchedulingProblem.LASER].between(shop.now, until);
            case PRINTER -> shop.open[SchedulingProblem.PRINTER].between(shop.now, until);
            case HANDS ->
                IntStream.range(SchedulingProblem.FIRST_PERSON, shop.open.length)
                        .map(p -> shop.open[p].between(shop.now, until))
                        .sum();
        };
    }
}
