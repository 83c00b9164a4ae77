/**
 * Where a print lies under the laser: marks measured on the machine, files for that very place, what was given out, and the
 * jig that brings blanks to one place.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Placing")
package puzzleworkshop.placing;
