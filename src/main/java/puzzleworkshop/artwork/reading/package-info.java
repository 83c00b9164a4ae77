/**
 * What is inside a file: its kind by content, its size before decoding, and its pixels row by row in bounded memory.
 */
package puzzleworkshop.artwork.reading;
