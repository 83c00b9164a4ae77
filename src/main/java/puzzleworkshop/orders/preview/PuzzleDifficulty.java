package puzzleworkshop.orders.preview;

import java.awt.image.BufferedImage;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.CroppedPictures;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.judged.Difficulty;
import puzzleworkshop.pattern.judged.PictureAlikeness;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.runtime.VersionedCache;

/** How hard a puzzle is with its picture; worked out once for each picture, crop and pattern and kept for a while. */
@Component
public class PuzzleDifficulty {

    /** Enough to see what a piece looks like; more would only take time. */
    private static final int PIXELS = 480;

    private static final long KEPT = 2_000;

    private final CroppedPictures pictures;
    private final PatternCache patterns;
    private final VersionedCache<Asked, Double> alikeness =
            VersionedCache.<Asked, Double>ofWeight(KEPT, number -> 1).restingOnTheQuestion();

    PuzzleDifficulty(CroppedPictures pictures, PatternCache patterns) {
        this.pictures = pictures;
        this.patterns = patterns;
    }

    private record Asked(PatternSpec spec, FramedPicture framed) {}

    public Difficulty of(Order order) {
        return of(order.puzzle().pattern(), order.picture());
    }

    /** @throws puzzleworkshop.measure.Refused as the maker of patterns does */
    public Difficulty of(PatternSpec spec, Optional<FramedPicture> framed) {
        return Difficulty.of(patterns.of(spec), alikeness(spec, framed));
    }

    /**
     * As many pieces as an order's picture and size allow without being too hard for a child, and how they meet.
     *
     * @throws puzzleworkshop.measure.Refused when even the fewest are too hard
     */
    public Difficulty.ForAge forAge(Order order, int years, Length smallest) {
        double look = alikeness(order.puzzle().pattern(), order.picture());
        return Difficulty.forAge(years, order.puzzle().finished(), look, smallest);
    }

    /** How alike neighbouring pieces look, 0 to 1; the usual value while there is no picture. */
    public double alikeness(PatternSpec spec, Optional<FramedPicture> framed) {
        return framed.map(picture -> alikeness.get(new Asked(spec, picture), () -> measured(spec, picture)))
                .orElse(PictureAlikeness.USUAL);
    }

    private double measured(PatternSpec spec, FramedPicture framed) {
        CutPattern pattern = patterns.of(spec);
        Size size = spec.size();
        BufferedImage face = pictures.face(framed.picture(), framed.crop(), size, PIXELS);
        return PictureAlikeness.of(pattern, face);
    }
}
