/** Small crosses in the overhang of a print, by which the laser finds where it lies; the same for the printer and the laser. */
@org.springframework.modulith.NamedInterface("crosses")
package puzzleworkshop.printing.crosses;
