package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import puzzleworkshop.planning.schedule.SchedulingProblem.Operation;
import puzzleworkshop.workshop.Stage;

/** Counts what a laid plan puts on each day, and what each day must hold at the latest. */
final class Loads {

    private static final int DAYS = 28;

    private Loads() {}

    static List<Load> of(SchedulingProblem shop, Timetable laid) {
        int resources = Stage.Resource.values().length;
        int[][] needed = new int[DAYS][resources];
        for (int j = 0; j < shop.jobs.size(); j++) {
            int[] after = shop.after(j);
            for (int k = shop.route[j].length - 1; k >= 0; k--) {
                Operation operation = shop.operations.get(shop.route[j][k]);
                int latestEnd = shop.due[j] - after[k];
                for (Stage.Resource resource : Stage.Resource.values()) {
                    int minutes = Bottleneck.on(operation, resource) / operation.members.size();
                    int day = dayOf(shop, resource, latestEnd);
                    if (minutes > 0 && day < DAYS) {
                        needed[day][resource.ordinal()] += minutes;
                    }
                }
            }
        }
        List<Load> loads = new ArrayList<>();
        LocalDate first = shop.origin.toLocalDate();
        int[] sum = new int[resources];
        int[] worst = new int[resources];
        for (int d = 0; d < DAYS; d++) {
            for (Stage.Resource resource : Stage.Resource.values()) {
                int from = d * 1440;
                int capacity = open(shop, resource, from, from + 1440);
                int planned = planned(shop, laid, resource, from, from + 1440);
                int r = resource.ordinal();
                sum[r] += needed[d][r] - capacity;
                int missing = Math.max(0, sum[r] - worst[r]);
                worst[r] += missing;
                loads.add(new Load(first.plusDays(d), resource, planned, needed[d][r], capacity, missing));
            }
        }
        return loads;
    }

    /** The last day, today at the earliest, on which the resource is open before the moment. */
    private static int dayOf(SchedulingProblem shop, Stage.Resource resource, int moment) {
        int day = Math.max(0, Math.floorDiv(moment - 1, 1440));
        while (day > 0 && day < DAYS && open(shop, resource, day * 1440, Math.min(moment, day * 1440 + 1440)) == 0) {
            day--;
        }
        return day;
    }

    /** What the plan has taken of the open time; work that goes on after a break leaves room for others between. */
    private static int planned(SchedulingProblem shop, Timetable laid, Stage.Resource resource, int from, int to) {
        return switch (resource) {
            case LASER -> laid.taken(SchedulingProblem.LASER, from, to);
            case PRINTER -> laid.taken(SchedulingProblem.PRINTER, from, to);
            case HANDS ->
                IntStream.range(SchedulingProblem.FIRST_PERSON, shop.open.length)
                        .map(p -> laid.taken(p, from, to))
                        .sum();
        };
    }

    private static int open(SchedulingProblem shop, Stage.Resource resource, int from, int to) {
        return switch (resource) {
            case LASER -> shop.open[SchedulingProblem.LASER].between(from, to);
            case PRINTER -> shop.open[SchedulingProblem.PRINTER].between(from, to);
            case HANDS ->
                IntStream.range(SchedulingProblem.FIRST_PERSON, shop.open.length)
                        .map(p -> shop.open[p].between(from, to))
                        .sum();
        };
    }
}
