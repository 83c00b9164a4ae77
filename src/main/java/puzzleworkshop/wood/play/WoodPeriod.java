package puzzleworkshop.wood.play;

import java.util.List;

/** What a period (a week) offers and asks for. */
public record WoodPeriod(List<ForSale> offers, List<Wanted> blanks) {

    public WoodPeriod {
        offers = List.copyOf(offers);
        blanks = List.copyOf(blanks);
    }

    public long wantedArea() {
        return blanks.stream().mapToLong(Wanted::area).sum();
    }
}
