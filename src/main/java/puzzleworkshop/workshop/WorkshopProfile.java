package puzzleworkshop.workshop;

import java.time.ZoneId;
import java.util.Currency;
import puzzleworkshop.measure.UnitSystem;

/**
 * Who the workshop is and how it counts.
 *
 * @param name as customers know it, not empty
 * @param address on papers, lines separated by line ends; may be empty
 * @param currency of every price; fixed once there are orders
 * @param units for lengths on screens and papers
 * @param zone in which its days begin and end
 * @param publicUrl where customers reach this program, without a slash at the end; empty: as the browser sees it
 */
public record WorkshopProfile(
        String name,
        String address,
        String email,
        String phone,
        Currency currency,
        UnitSystem units,
        ZoneId zone,
        String publicUrl) {

    public static WorkshopProfile named(String name, Currency currency, UnitSystem units, ZoneId zone) {
        return new WorkshopProfile(name, "", "", "", currency, units, zone, "");
    }
}
