package puzzleworkshop.delivery.boxes;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Sentence;

/**
 * The smallest box or bag in stock that takes a puzzle: smallest by the room inside, of equal ones the lighter.
 *
 * @param box absent when none takes it
 * @param reason why it is proposed, or what is missing
 */
public record BoxChoice(Optional<Box> box, Sentence reason) {

    private static final double CM3 = 1000;

    /** @param needed how many of them: each puzzle of an order has its own */
    public static BoxChoice smallest(List<Box> boxes, Contents contents, int needed) {
        List<Box> able = boxes.stream()
                .filter(box -> box.takes(contents))
                .sorted(Comparator.comparingDouble(Box::volumeMm3).thenComparingDouble(Box::emptyGrams))
                .toList();
        Optional<Box> best = able.stream()
                .filter(box -> box.item().stock().intValue() >= needed)
                .findFirst();
        if (best.isEmpty()) {
            return new BoxChoice(
                    Optional.empty(),
                    able.isEmpty()
                            ? Sentence.of(boxes.isEmpty() ? "delivery.box.unknown" : "delivery.box.none")
                            : Sentence.of(
                                    "delivery.box.short",
                                    able.getFirst().item().name(),
                                    able.getFirst().item().stock().intValue(),
                                    needed));
        }
        Box box = best.get();
        if (!contents.loose()) {
            return new BoxChoice(
                    best, Sentence.of("delivery.box.tray", box.item().name()));
        }
        return new BoxChoice(
                best,
                Sentence.of(
                        box.factor().isPresent() ? "delivery.box.measured" : "delivery.box.estimated",
                        box.item().name(),
                        contents.solidMm3() / CM3,
                        box.factorUsed(),
                        box.volumeMm3() / CM3));
    }
}
