package puzzleworkshop.geometry.align;

import java.util.List;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * An overhang that would do instead of the present one, and the sticker paper it saves on prints like those measured.
 *
 * @param overhang rounded up to 0.1 mm; never too small for the crosses that are printed
 * @param forCrosses whether the crosses decide, not the cuts
 * @param needed what it follows from
 * @param saved share of the stickers' area, 0 to 1; negative when more is needed than now
 */
public record ProposedOverhang(Length overhang, boolean forCrosses, NeededOverhang needed, double saved) {

    /**
     * @param crosses the least overhang that takes the crosses; zero when none are printed
     * @param measured finished sizes of the prints that were measured
     */
    public static ProposedOverhang of(NeededOverhang needed, Length crosses, Length now, List<Size> measured) {
        double least = Math.ceil(needed.largest() * 10 - 1e-9) / 10;
        boolean forCrosses = crosses.mm() > least;
        double overhang = forCrosses ? Math.ceil(crosses.mm() * 10 - 1e-9) / 10 : least;
        double before = area(measured, now.mm());
        return new ProposedOverhang(
                Length.mm(overhang), forCrosses, needed, before == 0 ? 0 : 1 - area(measured, overhang) / before);
    }

    private static double area(List<Size> measured, double overhang) {
        return measured.stream()
                .mapToDouble(p -> (p.width().mm() + 2 * overhang) * (p.height().mm() + 2 * overhang))
                .sum();
    }
}
