package puzzleworkshop.delivery.labels;

import java.util.Optional;

/**
 * The owner's words on what is printed for a parcel.
 *
 * @param labelWords on every box, below what the program computed; may be empty
 * @param careWords on the card in the box
 * @param hsCode of the Harmonized System, on customs data
 * @param contents what customs reads, in English or French
 * @param gtin of the puzzles, when the workshop has one
 * @param kind of label that is usually printed
 */
public record LabelSettings(
        String labelWords, String careWords, String hsCode, String contents, Optional<Gtin> gtin, LabelKind kind) {

    public static final int LONGEST_WORDS = 600;
    public static final int LONGEST_CONTENTS = 60;
}
