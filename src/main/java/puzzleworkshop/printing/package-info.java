/**
 * Puts waiting pictures together on sticker sheets and rolls, draws the print-ready PDF at exact size, and keeps what
 * was printed and what was spoiled.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Printing")
package puzzleworkshop.printing;
