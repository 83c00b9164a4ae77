package puzzleworkshop.pattern;

import java.util.Random;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/** Specs of any size, grid, thickness, style and outline that a workshop may ask for. */
public final class RandomSpecs {

    private RandomSpecs() {}

    public static PatternSpec next(Random random) {
        Length thickness = Length.mm(2 + random.nextInt(5));
        Length kerf = Length.mm(0.05 + random.nextInt(20) / 100.0);
        CutStyle style = CutStyle.values()[random.nextInt(10) < 7 ? 0 : 1 + random.nextInt(2)];
        double smallest = Math.max(
                10, WoodLimits.of(thickness, kerf).smallestKnobbedSide().mm());
        int columns = 1 + random.nextInt(12);
        int rows = Math.max(columns == 1 ? 2 : 1, 1 + random.nextInt(12));
        double piece = smallest * (1.0001 + random.nextDouble() * random.nextDouble() * 4);
        double stretch = 1 + random.nextDouble() * 0.5;
        boolean turned = random.nextBoolean();
        Size size = Size.mm(columns * piece * (turned ? stretch : 1), rows * piece * (turned ? 1 : stretch));
        PatternSpec plain = new PatternSpec(
                size,
                new PieceGrid(columns, rows),
                random.nextLong(),
                style,
                PuzzleEdge.square(),
                thickness,
                kerf,
                java.util.List.of());
        return switch (random.nextInt(4)) {
            case 0 -> plain.withOutline(PuzzleEdge.rounded(Length.mm(piece * (0.05 + 0.3 * random.nextDouble()))));
            case 1 -> plain.withOutline(PuzzleEdge.wavy(Length.mm(piece * (0.02 + 0.1 * random.nextDouble()))));
            default -> plain;
        };
    }
}
