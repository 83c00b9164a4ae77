/**
 * The laser and what is known about it: machines, settings proven by trials, honest cut times, and the checklist that
 * stands before every cut.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Cutting")
package puzzleworkshop.cutting;
