package puzzleworkshop.pricing.rates;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;

/**
 * One line of the price list: the price said for one puzzle up to a size and up to a number of pieces.
 *
 * @param longer longer side at most
 * @param shorter shorter side at most
 * @param pieces at most
 * @param price as it is said to the customer: with tax when the rule includes it
 */
public record ListPrice(Length longer, Length shorter, int pieces, Money price) {

    private static final Comparator<ListPrice> SMALLEST_FIRST = Comparator.comparing(
                    (ListPrice line) -> line.longer().mm() * line.shorter().mm())
            .thenComparing(ListPrice::pieces)
            .thenComparing(ListPrice::price);

    public boolean covers(Size finished, int count) {
        return count <= pieces
                && finished.longerSide().compareTo(longer) <= 0
                && finished.shorterSide().compareTo(shorter) <= 0;
    }

    /** The smallest line of the list that covers the puzzle. */
    public static Optional<ListPrice> find(List<ListPrice> list, Size finished, int count) {
        return list.stream().filter(line -> line.covers(finished, count)).min(SMALLEST_FIRST);
    }

    public Size size() {
        return new Size(longer, shorter);
    }
}
