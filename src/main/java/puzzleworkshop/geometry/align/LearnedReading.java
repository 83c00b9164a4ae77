package puzzleworkshop.geometry.align;

import java.util.List;
import java.util.Optional;

/**
 * How exactly marks are read in this workshop, from how far boards with three or four visited marks were off a similarity: each
 * mark gives two numbers, shift, turn and stretch take four, so the squares of all residuals over what is left, 2n − 4 for
 * each board, are the variance along an axis (linear regression, any textbook of it).
 *
 * @param boards with three or four marks
 * @param deviationMm standard deviation of a reading along an axis; holds what the print itself is out of square too
 */
public record LearnedReading(int boards, double deviationMm) {

    /** With so many numbers left over the deviation is known to a sixth (1/√(2·20)). */
    static final int FEWEST_FREE = 20;

    /**
     * @param residuals of each board, of each of its marks, in mm
     * @return none while too few boards were measured with more than two marks
     */
    public static Optional<LearnedReading> of(List<List<Double>> residuals) {
        List<List<Double>> telling =
                residuals.stream().filter(board -> board.size() > 2).toList();
        int free = telling.stream().mapToInt(board -> 2 * board.size() - 4).sum();
        if (free < FEWEST_FREE) {
            return Optional.empty();
        }
        double squares = telling.stream()
                .flatMap(List::stream)
                .mapToDouble(off -> off * off)
                .sum();
        return Optional.of(new LearnedReading(telling.size(), Math.sqrt(squares / free)));
    }
}
