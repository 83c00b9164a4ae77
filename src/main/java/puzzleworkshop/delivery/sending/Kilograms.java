package puzzleworkshop.delivery.sending;

/** Mass for people: kilograms with as many digits as a kitchen scale shows. */
public final class Kilograms {

    private static final double GRAMS = 1000;

    private Kilograms() {}

    /** As a number of a sentence, in kilograms; sentences show two digits. */
    public static double of(double grams) {
        return grams / GRAMS;
    }
}
