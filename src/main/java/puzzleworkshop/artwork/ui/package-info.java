/**
 * The crop editor and the picture with its cut lines, used by the screens of other rooms.
 */
@org.springframework.modulith.NamedInterface("ui")
package puzzleworkshop.artwork.ui;
