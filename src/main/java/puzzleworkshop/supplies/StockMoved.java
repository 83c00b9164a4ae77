package puzzleworkshop.supplies;

import puzzleworkshop.runtime.Change;

/** Something came onto the shelf or left it: what waits for it may go on, or has to wait. */
public record StockMoved(SupplyId item) implements Change {}
