/** In which order the waiting work is done on hands, printer and laser: pure functions. */
@org.springframework.modulith.NamedInterface("schedule")
package puzzleworkshop.planning.schedule;
