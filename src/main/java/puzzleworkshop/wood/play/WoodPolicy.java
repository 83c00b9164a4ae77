package puzzleworkshop.wood.play;

/** A way to decide, period by period. The same state gets the same decision. */
@FunctionalInterface
public interface WoodPolicy {

    WoodDecision decide(WoodState state);
}
