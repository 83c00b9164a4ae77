package puzzleworkshop.artwork;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.measure.Sentence;

/** What to look at before printing. All of it is measured and none of it is certain, and the sentences say so. */
public final class Hints {

    /** Real detail below this share of the good limit shows in print; common practice. */
    private static final double BLURRED = 0.6;

    private Hints() {}

    public static List<Sentence> of(Picture picture, Crop crop, Resolution resolution, PrintLimits limits) {
        List<Sentence> hints = new ArrayList<>();
        if (resolution.verdict() == Resolution.Verdict.REFUSE) {
            hints.add(Sentence.of("artwork.hint.too-coarse"));
        } else if (resolution.verdict() == Resolution.Verdict.SOFT) {
            hints.add(Sentence.of("artwork.hint.soft"));
        }
        picture.look().ifPresent(look -> {
            double real = resolution.ppi() * look.detail();
            // Pixels that are there but say nothing: only worth a word where the pixels alone would have passed.
            if (resolution.ppi() >= limits.soft() && real < limits.good() * BLURRED) {
                hints.add(Sentence.of("artwork.hint.blurred", Math.round(real)));
            }
            if (look.isDark()) {
                hints.add(Sentence.of("artwork.hint.dark"));
            }
            if (look.isFlat()) {
                hints.add(Sentence.of("artwork.hint.flat"));
            }
        });
        if (!resolution.overhangCovered()) {
            hints.add(Sentence.of("artwork.hint.edge." + crop.edge().name()));
        }
        return hints;
    }
}
