/** Fields of New order that say more than their value: size and pieces, with what is wrong or noteworthy beside them. */
package puzzleworkshop.offers.ui.fields;
