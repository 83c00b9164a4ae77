package puzzleworkshop.progress;

import java.time.Instant;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.BinaryOperator;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;

/** How long what was done at an order must lie before the stage that it holds up. */
public final class Rests {

    private static final BinaryOperator<Instant> LATEST = BinaryOperator.maxBy(Comparator.naturalOrder());

    private Rests() {}

    /**
     * Until when each stage still ahead is held up; that may have passed already. Stages that nothing holds up are left
     * out.
     *
     * @param done when each stage was last ticked
     * @param next the stage that is next; what was ticked from there on was done before it was made again
     */
    public static Map<Stage, Instant> until(Map<Stage, Instant> done, Stage next, Map<Stage, StageStandard> standards) {
        Map<Stage, Instant> until = new EnumMap<>(Stage.class);
        done.forEach((stage, at) -> {
            if (stage.compareTo(next) < 0) {
                stage.heldUpByRest()
                        .filter(held -> held.compareTo(next) >= 0)
                        .ifPresent(held ->
                                until.merge(held, at.plus(standards.get(stage).rest()), LATEST));
            }
        });
        return until;
    }
}
