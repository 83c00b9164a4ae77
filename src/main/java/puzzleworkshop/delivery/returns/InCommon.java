package puzzleworkshop.delivery.returns;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What complaints have in common: by stage, board and setting, most first. Where it is known how many orders left on a
 * board, the share that came back stands beside it with the score interval of 95 % (Wilson 1927), so that one of two does
 * not look worse than nine of ninety.
 */
public final class InCommon {

    /** Normal quantile of a two-sided 95 %. */
    private static final double Z = 1.959963984540054;

    private InCommon() {}

    /**
     * Complaints that share something.
     *
     * @param what they share, in words or as a key of one
     * @param of how many orders it could have been; absent where that is not known
     */
    public record Group(String what, List<Complaint> complaints, Optional<Integer> of) {

        public int orders() {
            return (int)
                    complaints.stream().map(one -> one.order().id()).distinct().count();
        }

        /** Lower end of the interval of the share. */
        public double atLeast() {
            return end(-1);
        }

        /** Upper end of the interval of the share. */
        public double atMost() {
            return end(1);
        }

        private double end(int side) {
            double n = of.orElseThrow();
            double share = Math.min(1, orders() / n);
            double middle = share + Z * Z / (2 * n);
            double half = Z * Math.sqrt(share * (1 - share) / n + Z * Z / (4 * n * n));
            return Math.clamp((middle + side * half) / (1 + Z * Z / n), 0, 1);
        }
    }

    public static List<Group> byStage(List<Complaint> complaints) {
        return groups(complaints, one -> one.stage().textKey(), Map.of());
    }

    /** @param left how many orders left the house on each board */
    public static List<Group> byBoard(List<Complaint> complaints, Map<String, Integer> left) {
        return groups(complaints, Complaint::board, left);
    }

    public static List<Group> bySetting(List<Complaint> complaints) {
        return groups(
                complaints.stream().filter(one -> !one.setting().isEmpty()).toList(), Complaint::setting, Map.of());
    }

    private static List<Group> groups(
            List<Complaint> complaints, Function<Complaint, String> what, Map<String, Integer> of) {
        Map<String, List<Complaint>> shared =
                complaints.stream().collect(Collectors.groupingBy(what, TreeMap::new, Collectors.toList()));
        List<Group> groups = new ArrayList<>();
        shared.forEach((key, those) -> groups.add(new Group(
                key, List.copyOf(those), Optional.ofNullable(of.get(key)).filter(n -> n > 0))));
        groups.sort(Comparator.comparingInt((Group group) -> -group.complaints().size())
                .thenComparing(Group::what));
        return List.copyOf(groups);
    }
}
