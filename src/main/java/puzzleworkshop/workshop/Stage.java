package puzzleworkshop.workshop;

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

    /** The key of its name in the texts. */
    public String textKey() {
        return "workshop.stage." + name();
    }
}
