/** Which boards to buy for given blanks at the least price, and in which order blanks are laid on them. */
package puzzleworkshop.wood.ahead.buying;
