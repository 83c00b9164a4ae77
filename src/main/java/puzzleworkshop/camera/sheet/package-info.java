/** The measuring sheet and the loose cards: where their markers stand, how they are printed, how they are found in a photo. */
@org.springframework.modulith.NamedInterface("sheet")
package puzzleworkshop.camera.sheet;
