package puzzleworkshop.placing.given;

import java.math.BigDecimal;
import java.math.RoundingMode;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.machines.FeedUnit;
import puzzleworkshop.machines.Machine;

/**
 * A setting as the machine's own program asks for it, for titles and names of layers: plain letters, a point for decimals.
 *
 * @param words 300 mm/min, 85 % power (S850), 2 passes, air on
 * @param layer the same in the letters a layer's name may have: 300MMPM_85PC_X2
 */
public record SettingWords(String words, String layer) {

    private static final int LONGEST_LAYER = 19;

    public static SettingWords of(Machine machine, CutParameters parameters) {
        FeedUnit unit = machine.control().feed();
        String speed = number(unit.of(parameters.speed()), 1);
        String power = number(parameters.power().hundredths().doubleValue(), 1);
        String scale = machine.control().takesGcode()
                ? " (S" + machine.control().words().power(parameters.power().asDouble()) + ")"
                : "";
        int passes = parameters.passes();
        String words = speed + " " + unit.words() + ", " + power + " % power" + scale + ", " + passes
                + (passes == 1 ? " pass" : " passes") + (parameters.airAssist() ? ", air on" : ", air off");
        String tail = switch (unit) {
            case MM_PER_MINUTE -> "MMPM";
            case MM_PER_SECOND -> "MMPS";
            case INCH_PER_MINUTE -> "INPM";
        };
        String head = speed.replace('.', '-') + tail + "_" + power.replace('.', '-');
        String layer = head + "PC_X" + passes;
        return new SettingWords(words, layer.length() <= LONGEST_LAYER ? layer : head + "_X" + passes);
    }

    public static String number(double value, int digits) {
        BigDecimal rounded =
                BigDecimal.valueOf(value).setScale(digits, RoundingMode.HALF_UP).stripTrailingZeros();
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }
}
