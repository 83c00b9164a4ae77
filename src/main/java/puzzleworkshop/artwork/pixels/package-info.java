/** What is done with rows of pixels: shrinking, turning, framing, measuring focus and light, in bounded memory. */
@org.springframework.modulith.NamedInterface("pixels")
package puzzleworkshop.artwork.pixels;
