package puzzleworkshop.machines;

/** A corner of the bed, seen by whoever stands in front of the machine. */
public enum BedCorner {
    FRONT_LEFT(true, true),
    FRONT_RIGHT(false, true),
    BACK_LEFT(true, false),
    BACK_RIGHT(false, false);

    private final boolean left;
    private final boolean front;

    BedCorner(boolean left, boolean front) {
        this.left = left;
        this.front = front;
    }

    public boolean isLeft() {
        return left;
    }

    public boolean isFront() {
        return front;
    }
}
