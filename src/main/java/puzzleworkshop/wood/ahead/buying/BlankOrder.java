package puzzleworkshop.wood.ahead.buying;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import puzzleworkshop.wood.play.Wanted;

/** The order in which the blanks of a period are laid. */
public enum BlankOrder {
    AREA(Comparator.comparingLong(Wanted::area)),
    LONGER_SIDE(Comparator.comparingInt((Wanted blank) -> Math.max(blank.width(), blank.height()))),
    HEIGHT(Comparator.comparingInt(Wanted::height)),
    WIDTH(Comparator.comparingInt(Wanted::width)),
    AROUND(Comparator.comparingInt((Wanted blank) -> blank.width() + blank.height()));

    private final Comparator<Wanted> rising;

    BlankOrder(Comparator<Wanted> rising) {
        this.rising = rising;
    }

    /** Places in the list, largest blank first. */
    public int[] of(List<Wanted> blanks) {
        return IntStream.range(0, blanks.size())
                .boxed()
                .sorted(Comparator.comparing(blanks::get, rising.reversed().thenComparing(AREA.rising.reversed()))
                        .thenComparing(i -> blanks.get(i).width())
                        .thenComparing(i -> i))
                .mapToInt(Integer::intValue)
                .toArray();
    }
}
