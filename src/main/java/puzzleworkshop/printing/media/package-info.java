/** What can be printed on: sticker sheets and rolls. */
@org.springframework.modulith.NamedInterface("media")
package puzzleworkshop.printing.media;
