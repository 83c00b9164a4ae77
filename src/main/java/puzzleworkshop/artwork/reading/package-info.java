/**
 * What is inside a file: its kind by content, its size before decoding, and its pixels row by row in bounded memory.
 */
@org.springframework.modulith.NamedInterface("reading")
package puzzleworkshop.artwork.reading;
