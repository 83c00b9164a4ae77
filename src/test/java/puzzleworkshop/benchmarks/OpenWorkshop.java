package puzzleworkshop.benchmarks;

import java.time.ZoneId;
import java.util.Currency;
import org.springframework.context.ConfigurableApplicationContext;
import puzzleworkshop.access.FirstSteps;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.workshop.WorkshopProfile;

/** A workshop of our own in a program on an empty data folder, and who may sign in to it. */
final class OpenWorkshop {

    static final String OWNER = "Robin";
    static final String PASSWORD = "birch paper ink 26";

    private OpenWorkshop() {}

    static void in(ConfigurableApplicationContext program) {
        program.getBean(FirstSteps.class)
                .open(
                        WorkshopProfile.named(
                                "Birch & Beam", Currency.getInstance("EUR"), UnitSystem.MILLIMETRES, ZoneId.of("UTC")),
                        OWNER,
                        PASSWORD);
    }
}
