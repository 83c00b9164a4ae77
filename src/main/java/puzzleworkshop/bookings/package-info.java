/** Sees to it that a booking happens once: keys made when a form opens, unique in the database. */
@org.springframework.modulith.ApplicationModule(displayName = "Bookings")
package puzzleworkshop.bookings;
