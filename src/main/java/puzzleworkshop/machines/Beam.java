package puzzleworkshop.machines;

import puzzleworkshop.measure.Length;

/**
 * The cutting end of a machine.
 *
 * @param powerWatts optical power at 100 %, above zero
 * @param wavelengthNm of the light in nanometres (blue diodes 445 to 455): eyewear is chosen by it
 * @param lensGap from the lens or its guard to the work; about 3 mm on a diode head (common practice)
 * @param kerf width of the cut, wood lost between two pieces
 */
public record Beam(double powerWatts, int wavelengthNm, Length lensGap, Length kerf) {

    public Beam {
        if (!(powerWatts > 0) || powerWatts > 10_000) {
            throw new IllegalArgumentException(
                    "The power of a beam is above 0 and at most 10,000 W, not " + powerWatts);
        }
        if (wavelengthNm < 180 || wavelengthNm > 20_000) {
            throw new IllegalArgumentException(
                    "A cutting wavelength lies between 180 and 20,000 nm, not " + wavelengthNm);
        }
        if (lensGap.mm() < 0 || kerf.mm() < 0) {
            throw new IllegalArgumentException("Lens gap and kerf are not negative");
        }
    }
}
