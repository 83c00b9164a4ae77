/** Working hours, free days, ways of delivery. */
@org.springframework.modulith.NamedInterface("calendar")
package puzzleworkshop.planning.calendar;
