package puzzleworkshop.cutfiles.dxf;

import java.util.List;
import puzzleworkshop.cutfiles.found.FoundLines;
import puzzleworkshop.cutfiles.found.Remark;

/** Millimetres in a drawing's unit: header variable $INSUNITS (DXF reference, HEADER section). */
final class DxfUnits {

    private static final double SURVEY_FOOT = 1200.0 / 3937 * 1000;

    private DxfUnits() {}

    static double millimetres(List<DxfThing> header, FoundLines found) {
        double millimetres = of(variable(header, "$INSUNITS"));
        if (millimetres > 0) {
            return millimetres;
        }
        boolean inches = variable(header, "$MEASUREMENT") == 0;
        found.remark(Remark.Kind.ASSUMED, inches ? "cutfiles.dxf.no_units_inch_likely" : "cutfiles.file.no_units");
        return 1;
    }

    /** -1 where it is missing. */
    private static int variable(List<DxfThing> header, String wanted) {
        for (DxfThing thing : header) {
            for (int i = thing.first(); i + 1 < thing.end(); i++) {
                if (thing.rows().code(i) == 9 && thing.rows().is(i, wanted)) {
                    return (int) thing.rows().number(i + 1);
                }
            }
        }
        return -1;
    }

    /** 0 for unitless and unknown ones. */
    static double of(int unit) {
        return switch (unit) {
            case 1 -> 25.4;
            case 2 -> 304.8;
            case 3 -> 1_609_344;
            case 4 -> 1;
            case 5 -> 10;
            case 6 -> 1000;
            case 7 -> 1e6;
            case 8 -> 25.4e-6;
            case 9 -> 0.0254;
            case 10 -> 914.4;
            case 11 -> 1e-7;
            case 12 -> 1e-6;
            case 13 -> 1e-3;
            case 14 -> 100;
            case 15 -> 1e4;
            case 16 -> 1e5;
            case 17 -> 1e12;
            case 18 -> 1.495978707e14;
            case 19 -> 9.4607304725808e18;
            case 20 -> 3.0856775814913673e19;
            case 21 -> SURVEY_FOOT;
            case 22 -> SURVEY_FOOT / 12;
            case 23 -> SURVEY_FOOT * 3;
            case 24 -> SURVEY_FOOT * 5280;
            default -> 0;
        };
    }
}
