package puzzleworkshop.wood.ahead;

/** A way to decide, period by period. The same state gets the same decision. */
@FunctionalInterface
public interface WoodPolicy {

    WoodDecision decide(WoodState state);
}
