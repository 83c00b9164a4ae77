package puzzleworkshop.wood;

import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;

/** How the boards that can be bought come: each dealer's own delivery, and pieces cut to size. */
@Service
public class Dealers {

    private final DealingStore store;
    private final RackSettings settings;

    Dealers(DealingStore store, RackSettings settings) {
        this.store = store;
        this.settings = settings;
    }

    /** The boards that can be bought now. */
    @Transactional(readOnly = true)
    public List<BoardOffer> boards() {
        return settings.offers().stream().filter(BoardOffer::offered).toList();
    }

    /** Of this board. */
    @Transactional(readOnly = true)
    public Dealing of(BoardOffer board) {
        return all().getOrDefault(board.id(), Dealing.usual(board.id()));
    }

    Map<Long, Dealing> all() {
        return store.all();
    }

    @Transactional
    public void save(Dealing dealing) {
        store.save(dealing);
    }
}
