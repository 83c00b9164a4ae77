package puzzleworkshop.delivery;

import java.util.List;
import org.springframework.stereotype.Component;
import puzzleworkshop.bench.Checklist;
import puzzleworkshop.bench.HandOverChecks;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.Stage;

/** At hand-over a carrier and a customer who comes are given different things to look at. */
@Component
class WayChecks implements HandOverChecks {

    private final HandOvers handOvers;

    WayChecks(HandOvers handOvers) {
        this.handOvers = handOvers;
    }

    @Override
    public List<Checklist.Line> of(Order order) {
        return handOvers
                .of(order)
                .filter(HandOvers.Entry::isCollected)
                .map(entry -> Checklist.atCollection())
                .orElseGet(() -> Checklist.of(Stage.HAND_OVER));
    }
}
