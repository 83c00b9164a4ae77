package puzzleworkshop.machines;

/**
 * How a machine's control wants to be spoken to in G-code; each field is a setting of the machine.
 *
 * @param dynamic whether the control scales the beam with the speed really run (M4), so that corners do not char; else the
 *     beam is constant (M3)
 * @param fullPower the S word that stands for 100 %, for example 255, 1000 or 10,000
 * @param airOn the word that starts the air, M7 or M8; empty when the control does not switch it
 * @param secondsInDwell whether P of a dwell (G4) is in seconds, as RS274/NGC says; else in milliseconds
 */
public record BeamWords(boolean dynamic, int fullPower, String airOn, boolean secondsInDwell) {

    /** Power that follows the speed, 1000 for full power, air by M8: common practice of open firmware's laser mode. */
    public static final BeamWords FOLLOWING_SPEED = new BeamWords(true, 1000, "M8", true);

    /** Constant power, 255 for full power, no switched air. */
    public static final BeamWords CONSTANT = new BeamWords(false, 255, "", true);

    public BeamWords {
        if (fullPower < 1 || fullPower > 100_000) {
            throw new IllegalArgumentException("Full power is a number from 1 to 100,000, not " + fullPower);
        }
        if (!airOn.matches("|M7|M8")) {
            throw new IllegalArgumentException("Air is started by M7 or M8, not by " + airOn);
        }
    }

    /** The word that readies the beam. */
    public String beamReady() {
        return dynamic ? "M4" : "M3";
    }

    /** The S word for a share of full power; at least 1 where the share is above 0. */
    public int power(double share) {
        return share <= 0 ? 0 : (int) Math.max(1, Math.round(fullPower * share));
    }
}
