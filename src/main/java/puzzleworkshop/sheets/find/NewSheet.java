package puzzleworkshop.sheets.find;

import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.sheets.board.BoardOffer;

/**
 * A board to buy for a blank that no sheet in the rack gives.
 *
 * @param blankCost what the blank would carry of the board's price by the rule in force
 */
public record NewSheet(BoardOffer offer, Placement placement, Remainder remainder, Money blankCost, Sentence reason) {}
