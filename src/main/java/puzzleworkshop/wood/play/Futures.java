package puzzleworkshop.wood.play;

import java.util.List;
import java.util.random.RandomGenerator;

/** What may come after a period, as far as the state and what is usual teach it. */
@FunctionalInterface
public interface Futures {

    /** One course of so many periods; another draw, another course. */
    List<WoodPeriod> draw(WoodState state, int periods, RandomGenerator random);
}
