package puzzleworkshop.pricing.cost;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import puzzleworkshop.measure.Money;

/**
 * Exact amounts made payable so that they add up to a payable total: each is rounded down and the units left over go to
 * the largest remainders (Hamilton's method). Unlike {@link Money#allocate} parts may be negative here, such as a
 * shipping charge above the postage.
 */
public final class LargestRemainder {

    private LargestRemainder() {}

    public static Map<CostPart, Money> addingUpTo(Money total, Map<CostPart, Money> exact) {
        List<CostPart> parts = List.copyOf(exact.keySet());
        List<Money> shown = addingUpTo(
                total, parts.stream().map(part -> exact.get(part).amount()).toList());
        Map<CostPart, Money> result = new EnumMap<>(CostPart.class);
        IntStream.range(0, parts.size()).forEach(i -> result.put(parts.get(i), shown.get(i)));
        return result;
    }

    public static List<Money> addingUpTo(Money total, List<BigDecimal> exact) {
        if (exact.isEmpty()) {
            return List.of();
        }
        int digits = total.currency().getDefaultFractionDigits();
        List<BigDecimal> floors = exact.stream()
                .map(amount -> amount.setScale(digits, RoundingMode.FLOOR))
                .toList();
        List<BigDecimal> parts = new ArrayList<>(floors);
        BigDecimal unit = BigDecimal.ONE.movePointLeft(digits);
        BigDecimal floorSum = floors.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        int left = total.rounded()
                .amount()
                .subtract(floorSum)
                .divide(unit, 0, RoundingMode.HALF_UP)
                .intValueExact();
        List<Integer> byRemainder = IntStream.range(0, exact.size())
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> exact.get(i).subtract(floors.get(i)))
                        .reversed())
                .toList();
        // More units than parts only when the total is not the sum of the parts; then they are dealt round and round.
        BigDecimal step = left < 0 ? unit.negate() : unit;
        for (int n = 0; n < Math.abs(left); n++) {
            int i = byRemainder.get(n % byRemainder.size());
            parts.set(i, parts.get(i).add(step));
        }
        return parts.stream().map(amount -> Money.of(amount, total.currency())).toList();
    }
}
