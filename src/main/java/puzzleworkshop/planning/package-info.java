/**
 * The week: who works when, what waits for hands, printer and laser, in which order it is best done, which date can be
 * promised, and what gives when not everything fits.
 */
@org.springframework.modulith.ApplicationModule(displayName = "Planning")
package puzzleworkshop.planning;
