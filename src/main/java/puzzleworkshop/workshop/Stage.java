package puzzleworkshop.workshop;

import java.util.Optional;

/** What is done at the bench to one order, in this order. Each takes hands; some also take the printer or the laser. */
public enum Stage {
    PRINT(Resource.PRINTER),
    LAMINATE(Resource.HANDS),
    SHEET_PREP(Resource.HANDS),
    STICK(Resource.HANDS),
    MASK(Resource.HANDS),
    CUT(Resource.LASER),
    FINISH(Resource.HANDS),
    PACK(Resource.HANDS),
    HAND_OVER(Resource.HANDS);

    /** What a stage occupies. */
    public enum Resource {
        HANDS,
        PRINTER,
        LASER
    }

    private final Resource resource;

    Stage(Resource resource) {
        this.resource = resource;
    }

    public Resource resource() {
        return resource;
    }

    /**
     * The stage that has to wait while what was done here rests: the next one, but where the next one works on something
     * else. A board is prepared without its print, so film that settles holds up only where the print is stuck on.
     */
    public Optional<Stage> heldUpByRest() {
        return switch (this) {
            case LAMINATE -> Optional.of(STICK);
            case HAND_OVER -> Optional.empty();
            default -> Optional.of(values()[ordinal() + 1]);
        };
    }

    /** The key of its name in the texts. */
    public String textKey() {
        return "workshop.stage." + name();
    }
}
