package puzzleworkshop.bookings;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A command that books something in a ledger. Its first parameter is a {@link puzzleworkshop.measure.BookingKey}, and what
 * it does goes through {@link Bookings}. A test finds all of them and sends each twice.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface Books {}
