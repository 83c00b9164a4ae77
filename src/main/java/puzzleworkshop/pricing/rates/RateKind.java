package puzzleworkshop.pricing.rates;

import java.math.BigDecimal;
import java.util.Map;
import puzzleworkshop.machines.MachineCosts;

/**
 * The figures a price is built from. Each has a value from a day on; the starting values are common practice for one
 * small diode laser and are meant to be replaced.
 */
public enum RateKind {
    WAGE_HOUR(Group.HANDS, Form.MONEY, "24"),

    MACHINE_PRICE(Group.MACHINE, Form.MONEY, "900"),
    MACHINE_RESIDUAL(Group.MACHINE, Form.MONEY, "100"),
    MACHINE_LIFE_HOURS(Group.MACHINE, Form.POSITIVE, "2000"),
    MACHINE_KILOWATTS(Group.MACHINE, Form.NUMBER, "0.18"),
    ENERGY_TARIFF(Group.MACHINE, Form.MONEY, "0.30"),
    MACHINE_UPKEEP_YEAR(Group.MACHINE, Form.MONEY, "60"),
    MACHINE_HOURS_YEAR(Group.MACHINE, Form.POSITIVE, "600"),
    LENS_PRICE(Group.MACHINE, Form.MONEY, "25"),
    LENS_LIFE_HOURS(Group.MACHINE, Form.POSITIVE, "300"),
    FILTER_PRICE(Group.MACHINE, Form.MONEY, "30"),
    FILTER_LIFE_HOURS(Group.MACHINE, Form.POSITIVE, "200"),

    CUT_SPEED(Group.MACHINE, Form.POSITIVE, "300"),
    CUT_PASSES(Group.MACHINE, Form.POSITIVE, "2"),

    BOARD_M2(Group.MATERIAL, Form.MONEY, "12"),
    STICKER_M2(Group.MATERIAL, Form.MONEY, "9"),
    LAMINATE_M2(Group.MATERIAL, Form.MONEY, "4.50"),
    SHEET_WASTE(Group.MATERIAL, Form.PERCENT, "15"),
    INK_ML(Group.MATERIAL, Form.MONEY, "0.12"),
    INK_ML_M2(Group.MATERIAL, Form.NUMBER, "12"),
    INK_COVERAGE(Group.MATERIAL, Form.PERCENT, "80"),
    TAPE_M2(Group.MATERIAL, Form.MONEY, "2.50"),
    BOX(Group.MATERIAL, Form.MONEY, "1.20"),
    BAG(Group.MATERIAL, Form.MONEY, "0.10"),
    LABEL(Group.MATERIAL, Form.MONEY, "0.05"),

    OVERHEAD_MACHINE_HOUR(Group.OVERHEAD, Form.MONEY, "3"),
    OVERHEAD_SHARE(Group.OVERHEAD, Form.PERCENT, "0"),
    FIXED_MONTH(Group.OVERHEAD, Form.MONEY, "600"),

    FEE_FIXED(Group.FEES, Form.MONEY, "0.35"),
    FEE_SHARE(Group.FEES, Form.PERCENT, "2.9"),
    VAT(Group.FEES, Form.PERCENT, "20"),
    VAT_REDUCED(Group.FEES, Form.PERCENT, "10");

    /** What belongs together on the screen. */
    public enum Group {
        HANDS,
        MACHINE,
        MATERIAL,
        OVERHEAD,
        FEES;

        public String textKey() {
            return "pricing.rates." + name();
        }
    }

    /** What kind of figure it is, and its range. */
    public enum Form {
        /** Zero or more, in the workshop's currency. */
        MONEY,
        /** 0 to below 100 %. */
        PERCENT,
        /** Zero or more. */
        NUMBER,
        /** Above zero, because something is divided by it. */
        POSITIVE
    }

    private final Group group;
    private final Form form;
    private final BigDecimal start;

    RateKind(Group group, Form form, String start) {
        this.group = group;
        this.form = form;
        this.start = new BigDecimal(start);
    }

    public Group group() {
        return group;
    }

    public Form form() {
        return form;
    }

    /** The value that holds until the workshop sets its own. */
    public BigDecimal start() {
        return start;
    }

    public String textKey() {
        return "pricing.rate." + name();
    }

    /** Whether it is a fact about the laser, which stands with the laser and is only shown among the rates. */
    public boolean isAtTheMachine() {
        return switch (this) {
            case MACHINE_PRICE,
                    MACHINE_RESIDUAL,
                    MACHINE_LIFE_HOURS,
                    MACHINE_KILOWATTS,
                    MACHINE_UPKEEP_YEAR,
                    MACHINE_HOURS_YEAR,
                    LENS_PRICE,
                    LENS_LIFE_HOURS,
                    FILTER_PRICE,
                    FILTER_LIFE_HOURS -> true;
            default -> false;
        };
    }

    /** The figures that a machine's own costs say; its wear parts are lines of their own. */
    static Map<RateKind, BigDecimal> atTheMachine(MachineCosts costs) {
        return Map.of(
                MACHINE_PRICE, costs.price().amount(),
                MACHINE_RESIDUAL, costs.residual().amount(),
                MACHINE_LIFE_HOURS, BigDecimal.valueOf(costs.lifeHours()),
                MACHINE_KILOWATTS, BigDecimal.valueOf(costs.powerKw()),
                MACHINE_UPKEEP_YEAR, costs.yearlyUpkeep().amount(),
                MACHINE_HOURS_YEAR, BigDecimal.valueOf(costs.yearlyHours()));
    }

    /** Whether the figure lies in the range of its form. */
    public boolean allows(BigDecimal value) {
        return switch (form) {
            case MONEY, NUMBER -> value.signum() >= 0;
            case POSITIVE -> value.signum() > 0;
            case PERCENT -> value.signum() >= 0 && value.compareTo(BigDecimal.valueOf(100)) < 0;
        };
    }

    /** Whether it is money for a square metre. */
    public boolean isForArea() {
        return this == BOARD_M2 || this == STICKER_M2 || this == LAMINATE_M2 || this == TAPE_M2;
    }
}
