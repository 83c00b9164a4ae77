package puzzleworkshop;

import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;
import org.springframework.modulith.docs.Documenter;
import org.springframework.modulith.docs.Documenter.DiagramOptions;
import org.springframework.modulith.docs.Documenter.Options;

/**
 * Rooms speak to each other through their faces only, and never in a circle. The whole house is read once more for it;
 * FloorsTest tells most of it in the inner loop.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
@Tag("slow")
class RoomsTest {

    static final ApplicationModules ROOMS = ApplicationModules.of(PuzzleWorkshop.class, onlyTheProgram());

    @Test
    void rooms_use_each_others_faces_only_and_never_in_a_circle() {
        ROOMS.verify();
    }

    /** The map of rooms as it is in the code, for whoever works on it: target/rooms. */
    @Test
    void the_map_of_rooms_can_be_drawn() {
        new Documenter(ROOMS, Options.defaults().withOutputFolder("target/rooms"))
                .writeModulesAsPlantUml(DiagramOptions.defaults());
    }

    /** Tests stand in the rooms' packages but are no part of them, wherever they are compiled to. */
    private static ImportOption onlyTheProgram() {
        String program = PuzzleWorkshop.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .getPath();
        return location -> !location.contains("/puzzleworkshop/") || location.contains(program);
    }
}
