/**
 * Files as somebody would make them who wants to do harm: bombs, cut short, flipped bits, polyglots, nested, endless. Made
 * by code from a seed, so that a file that did harm can be made again.
 */
package puzzleworkshop.support.hostile;
