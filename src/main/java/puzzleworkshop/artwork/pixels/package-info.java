/** Pictures as rows of pixels: shrinking, turning, framing, colours, in bounded memory. */
@org.springframework.modulith.NamedInterface("pixels")
package puzzleworkshop.artwork.pixels;
