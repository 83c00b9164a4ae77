package puzzleworkshop.planning.schedule;

import java.util.Optional;
import puzzleworkshop.workshop.Stage;

/**
 * One stage that a job still has before it. Whole minutes.
 *
 * @param stage what is done
 * @param setUp saved when the machine has just done work with the same setting
 * @param work the time of the stage itself
 * @param hands minutes of a person from its start; less than set-up and work where a machine runs while its maker does
 *     something else beside it
 * @param rest waiting after it that occupies nobody, such as laminate that settles over night; it holds up what
 *     {@link Stage#heldUpByRest()} says
 * @param setting material and machine setting; empty where set-ups are never saved
 * @param batch tasks of one stage with the same name are done together
 * @param begun minutes already worked on it; present for work that has been started, which stays first
 */
public record Task(
        Stage stage,
        int setUp,
        int work,
        int hands,
        int rest,
        String setting,
        Optional<String> batch,
        Optional<Integer> begun) {

    public Task {
        if (setUp < 0 || work < 0 || rest < 0 || hands < 0 || hands > setUp + work) {
            throw new IllegalArgumentException(
                    "Minutes of " + stage + " must be zero or more, hands at most the whole");
        }
    }

    /** Work of hands alone. */
    public static Task byHand(Stage stage, int setUp, int work, int rest) {
        return new Task(stage, setUp, work, setUp + work, rest, "", Optional.empty(), Optional.empty());
    }

    /** Work of a machine that is set up by hand and then runs with its maker beside it. */
    public static Task byMachine(Stage stage, int setUp, int work, String setting) {
        return new Task(stage, setUp, work, setUp, 0, setting, Optional.empty(), Optional.empty());
    }

    public Task inBatch(String name) {
        return new Task(stage, setUp, work, hands, rest, setting, Optional.of(name), begun);
    }

    public Task startedBefore(int minutes) {
        return new Task(stage, setUp, work, hands, rest, setting, batch, Optional.of(minutes));
    }

    public int minutes() {
        return setUp + work;
    }
}
