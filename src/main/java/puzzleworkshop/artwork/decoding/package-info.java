/** Where strangers' pictures are decoded: few at a time, from files that are gone afterwards. */
package puzzleworkshop.artwork.decoding;
